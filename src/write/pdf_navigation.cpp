#include "pdf_navigation.hpp"

#include "blockwright/text/clean_text.hpp"

namespace blockwright::writing {

PdfId add_outline(PdfObjects& objects, const std::vector<Page>& pages,
                  const std::vector<PdfId>& page_ids) {
  const PdfId outline = objects.reserve();
  std::vector<PdfId> entries;
  for (std::size_t i = 0; i < pages.size(); ++i) entries.push_back(objects.reserve());
  for (std::size_t i = 0; i < pages.size(); ++i) {
    std::string entry = "<< /Title " + pdf_text(clean_line(pages[i].label)) + " /Parent " +
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

std::string page_labels(const std::vector<Page>& pages) {
  std::string text = "<< /Nums [";
  for (std::size_t i = 0; i < pages.size(); ++i) {
    text += std::to_string(i) + " << /P " + pdf_text(clean_line(pages[i].label)) + " >> ";
  }
  return text + "] >>";
}

}  // namespace blockwright::writing
