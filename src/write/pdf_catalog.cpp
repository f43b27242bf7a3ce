#include "pdf_catalog.hpp"

#include "blockwright/base/version.hpp"
#include "xml_text.hpp"

namespace blockwright::writing {
namespace {

std::string producer() { return "blockwright " + std::string(version()); }

std::string layer_content(PdfFonts& fonts, const Sheet& sheet, SheetLayer layer) {
  PdfContent content(fonts);
  for (const Stroke& stroke : sheet.strokes) {
    if (stroke.layer == layer) content.stroke(stroke);
  }
  for (const SheetText& text : sheet.texts) {
    if (text.layer == layer) content.text(text);
  }
  return content.take();
}

std::string box_text(const Box& box) {
  return '[' + pdf_number(box.left) + ' ' + pdf_number(box.bottom) + ' ' + pdf_number(box.right) +
         ' ' + pdf_number(box.top) + ']';
}

std::string references(const std::vector<PdfId>& ids) {
  std::string text;
  for (const PdfId id : ids) text += pdf_ref(id) + ' ';
  return '[' + text + ']';
}

}  // namespace

PdfId add_outline(PdfObjects& objects, const std::vector<Page>& pages,
                  const std::vector<PdfId>& page_ids) {
  const PdfId outline = objects.reserve();
  std::vector<PdfId> entries;
  for (std::size_t i = 0; i < pages.size(); ++i) entries.push_back(objects.reserve());
  for (std::size_t i = 0; i < pages.size(); ++i) {
    std::string entry = "<< /Title " + objects.text(pages[i].label) + " /Parent " +
                        pdf_ref(outline) + " /Dest [" + pdf_ref(page_ids[i]) + " /Fit]";
    if (i > 0) entry += " /Prev " + pdf_ref(entries[i - 1]);
    if (i + 1 < pages.size()) entry += " /Next " + pdf_ref(entries[i + 1]);
    objects.set(entries[i], entry + " >>");
  }
  objects.set(outline, "<< /Type /Outlines /First " + pdf_ref(entries.front()) + " /Last " +
                           pdf_ref(entries.back()) + " /Count " + std::to_string(pages.size()) +
                           " >>");
  return outline;
}

std::string page_labels(const PdfObjects& objects, const std::vector<Page>& pages) {
  std::string text = "<< /Nums [";
  for (std::size_t i = 0; i < pages.size(); ++i) {
    text += std::to_string(i) + " << /P " + objects.text(pages[i].label) + " >> ";
  }
  return text + "] >>";
}

PdfId add_info(PdfObjects& objects, const std::string& title) {
  const std::string program = objects.text(producer());
  return objects.add("<< /Title " + objects.text(title) + " /Creator " + program + " /Producer " +
                     program + " >>");
}

PdfId add_xmp(PdfObjects& objects, const std::string& title) {
  const std::string program = xml_text(producer());
  return objects.add_stream(
      {"<?xpacket begin=\"\xEF\xBB\xBF\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n"
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
           "</rdf:Description>\n</rdf:RDF>\n</x:xmpmeta>\n<?xpacket end=\"r\"?>\n",
       "/Type /Metadata /Subtype /XML"});
}

std::vector<PdfLayer> add_layers(PdfObjects& objects, PdfFonts& fonts, const Sheet& sheet,
                                 const Box& extent, PdfId resources) {
  std::vector<PdfLayer> layers;
  for (const SheetLayerNames& names : kSheetLayers) {
    PdfLayer layer{std::to_string(layers.size()), 0, {}};
    layer.group = objects.add("<< /Type /OCG /Name " + objects.text(names.name) + " >>");
    const std::string content = layer_content(fonts, sheet, names.layer);
    if (!content.empty()) {
      layer.form =
          objects.add_stream({content, "/Type /XObject /Subtype /Form /BBox " + box_text(extent) +
                                           " /Resources " + pdf_ref(resources)});
    }
    layers.push_back(std::move(layer));
  }
  return layers;
}

std::string layer_properties(const std::vector<PdfLayer>& layers, const Sheet& sheet) {
  std::vector<PdfId> all;
  std::vector<PdfId> off;
  for (std::size_t i = 0; i < layers.size(); ++i) {
    all.push_back(layers[i].group);
    if (!sheet.shows_at_first(kSheetLayers[i].layer)) off.push_back(layers[i].group);
  }
  return "<< /OCGs " + references(all) + " /D << /Name (layers) /Order " + references(all) +
         " /OFF " + references(off) + " >> >>";
}

}  // namespace blockwright::writing
