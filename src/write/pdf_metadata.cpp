#include "pdf_metadata.hpp"

#include "blockwright/base/version.hpp"
#include "blockwright/text/clean_text.hpp"
#include "xml_text.hpp"

namespace blockwright::writing {
namespace {

std::string producer() { return "blockwright " + std::string(version()); }

}  // namespace

PdfId add_info(PdfObjects& objects, const std::string& title) {
  const std::string program = pdf_text(producer());
  return objects.add("<< /Title " + pdf_text(clean_line(title)) + " /Creator " + program +
                     " /Producer " + program + " >>");
}

PdfId add_xmp(PdfObjects& objects, const std::string& title) {
  const std::string program = xml_text(producer());
  return objects.add_stream(
      "/Type /Metadata /Subtype /XML",
      "<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
      "<x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\n"
      "<rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\n"
      "<rdf:Description rdf:about=\"\" xmlns:dc=\"http://purl.org/dc/elements/1.1/\"\n"
      "  xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\">\n"
      "<dc:format>application/pdf</dc:format>\n"
      "<dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">" +
          xml_text(title) +
          "</rdf:li></rdf:Alt></dc:title>\n"
          "<xmp:CreatorTool>" +
          program +
          "</xmp:CreatorTool>\n"
          "<pdf:Producer>" +
          program +
          "</pdf:Producer>\n"
          "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>\n");
}

}  // namespace blockwright::writing
