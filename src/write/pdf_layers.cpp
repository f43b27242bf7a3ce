#include "pdf_layers.hpp"

#include "stroke_look.hpp"

// Optional content: ISO 32000-1:2008, 8.11.
namespace blockwright::writing {
namespace {

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

std::vector<PdfLayer> add_layers(PdfObjects& objects, PdfFonts& fonts, const Sheet& sheet,
                                 const Box& extent, PdfId resources) {
  std::vector<PdfLayer> layers;
  for (const SheetLayer sheet_layer : kAllLayers) {
    const std::string number = std::to_string(layers.size());
    PdfLayer layer{'L' + number, 0, 'S' + number, {}};
    layer.group =
        objects.add("<< /Type /OCG /Name " + pdf_text(sheet_layer_name(sheet_layer)) + " >>");
    const std::string content = layer_content(fonts, sheet, sheet_layer);
    if (!content.empty()) {
      layer.form = objects.add_stream("/Type /XObject /Subtype /Form /BBox " + box_text(extent) +
                                          " /Resources " + pdf_ref(resources),
                                      content);
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
    if (!shown_at_first(sheet, kAllLayers[i])) off.push_back(layers[i].group);
  }
  return "<< /OCGs " + references(all) + " /D << /Name (layers) /Order " + references(all) +
         " /OFF " + references(off) + " >> >>";
}

}  // namespace blockwright::writing
