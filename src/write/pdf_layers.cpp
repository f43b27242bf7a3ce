#include "pdf_layers.hpp"

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
  for (const SheetLayerNames& names : kSheetLayers) {
    PdfLayer layer{std::to_string(layers.size()), 0, {}};
    layer.group = objects.add("<< /Type /OCG /Name " + pdf_text(names.name) + " >>");
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
