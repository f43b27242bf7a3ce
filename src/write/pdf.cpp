#include "blockwright/base/error.hpp"
#include "blockwright/base/number_text.hpp"
#include "blockwright/write/writers.hpp"
#include "pdf_catalog.hpp"

#include <cmath>
#include <memory>
#include <ostream>

namespace blockwright {
namespace {

using namespace writing;

constexpr double kPointsPerMm = 72.0 / 25.4;
// Viewers need not take pages larger than this many units (200 in); a larger page says that its
// units are bigger. ISO 32000-1:2008, annex C and 14.11 (UserUnit).
constexpr double kMostUnits = 14400.0;
constexpr int kPageDecimals = 4;  // of a point: 0.00004 mm
// Lines on the border of what pages show are drawn with their full width.
constexpr double kBleed = 5.0;

// A scaled print is a wrong pattern, so the print dialog starts at no scaling, on the paper that
// fits the page, and on one side of it, for tiles are cut and joined. ISO 32000-1:2008, 12.2.
constexpr std::string_view kPrintDialog =
    "/PrintScaling /None /PickTrayByPDFSize true /Duplex /Simplex";

/// How many points one unit of the page is: 1, or more on very large pages.
double user_unit(const Page& page) {
  const double points = std::max(page.width, page.height) * kPointsPerMm;
  return std::max(1.0, std::ceil(points / kMostUnits));
}

/// All of the sheet that can be seen on some page, and a little more.
Box visible_extent(const PrintPlan& plan) {
  Box box{0.0, 0.0, plan.sheet.width, plan.sheet.height};
  for (const Page& page : plan.pages) {
    if (page.window) box.include(*page.window);
  }
  return {box.left - kBleed, box.bottom - kBleed, box.right + kBleed, box.top + kBleed};
}

void draw_window(PdfContent& content, const Page& page, const std::vector<PdfLayer>& layers) {
  const Box& window = *page.window;
  content.save();
  content.shift(page.window_at - Point{window.left, window.bottom});
  content.clip(window);
  for (const PdfLayer& layer : layers) {
    if (layer.form) content.draw_layer(layer.number);
  }
  content.restore();
}

/// Furniture is drawn outside the layers: frames, labels and test squares always print.
std::string page_content(PdfFonts& fonts, const Page& page, const std::vector<PdfLayer>& layers) {
  PdfContent content(fonts);
  content.save();
  content.scale(kPointsPerMm / user_unit(page));
  if (page.window) draw_window(content, page, layers);
  for (const Stroke& stroke : page.furniture.strokes) content.stroke(stroke);
  for (const SheetText& text : page.furniture.texts) content.text(text);
  content.restore();
  return content.take();
}

std::string page_resources(const std::vector<PdfLayer>& layers, const std::string& fonts) {
  std::string groups;
  std::string forms;
  for (const PdfLayer& layer : layers) {
    groups += "/L" + layer.number + ' ' + pdf_ref(layer.group) + ' ';
    if (layer.form) forms += "/S" + layer.number + ' ' + pdf_ref(*layer.form) + ' ';
  }
  return "<< /Font << " + fonts + ">> /Properties << " + groups + ">> /XObject << " + forms +
         ">> >>";
}

/// The document in the making; each part adds its objects once. Objects are numbered as they are
/// added, so no two may be added within one expression: compilers differ in what they do first.
class PdfDocument {
 public:
  PdfDocument(const PrintPlan& plan, TextFonts& fonts) : plan_(plan), fonts_(fonts) {}

  void write(std::ostream& out) {
    layers_ = add_layers(objects_, fonts_, plan_.sheet, visible_extent(plan_), form_resources_);
    add_pages();
    add_resources();
    const PdfId catalog = add_catalog();
    const PdfId info = add_info(objects_, plan_.title);
    objects_.write(out, {catalog, info});
  }

 private:
  [[nodiscard]] std::string page_object(const Page& page, PdfId content) const {
    const double unit = user_unit(page);
    const auto size = [&](double mm) { return trimmed(mm * kPointsPerMm / unit, kPageDecimals); };
    std::string text = "<< /Type /Page /Parent " + pdf_ref(page_tree_) + " /MediaBox [0 0 " +
                       size(page.width) + ' ' + size(page.height) + "] /Resources " +
                       pdf_ref(page_resources_) + " /Contents " + pdf_ref(content);
    if (unit > 1.0) text += " /UserUnit " + trimmed(unit, 0);
    return text + " >>";
  }

  void add_pages() {
    std::string kids;
    for (const Page& page : plan_.pages) {
      const PdfId content = objects_.add_stream({page_content(fonts_, page, layers_)});
      page_ids_.push_back(objects_.add(page_object(page, content)));
      kids += pdf_ref(page_ids_.back()) + ' ';
    }
    objects_.set(page_tree_, "<< /Type /Pages /Count " + std::to_string(page_ids_.size()) +
                                 " /Kids [" + kids + "] >>");
  }

  /// Last, because only now all letters that the fonts must have are known.
  void add_resources() {
    const std::string fonts = fonts_.add_to(objects_);
    objects_.set(form_resources_, "<< /Font << " + fonts + ">> >>");
    objects_.set(page_resources_, page_resources(layers_, fonts));
  }

  PdfId add_catalog() {
    const PdfId outline = add_outline(objects_, plan_.pages, page_ids_);
    const PdfId xmp = add_xmp(objects_, plan_.title);
    return objects_.add(
        "<< /Type /Catalog /Pages " + pdf_ref(page_tree_) + " /Lang (en)" + " /Outlines " +
        pdf_ref(outline) + " /PageLabels " + page_labels(objects_, plan_.pages) +
        " /OCProperties " + layer_properties(layers_, plan_.sheet) + " /Metadata " + pdf_ref(xmp) +
        " /ViewerPreferences << " + std::string(kPrintDialog) + " /DisplayDocTitle true >> >>");
  }

  const PrintPlan& plan_;
  std::unique_ptr<PdfObjects> file_ = new_pdf_objects();
  PdfObjects& objects_ = *file_;
  PdfFonts fonts_;
  PdfId page_tree_ = objects_.reserve();
  PdfId form_resources_ = objects_.reserve();
  PdfId page_resources_ = objects_.reserve();
  std::vector<PdfLayer> layers_;
  std::vector<PdfId> page_ids_;
};

}  // namespace

void write_pdf(std::ostream& out, const PrintPlan& plan, TextFonts& fonts) {
  require(!plan.pages.empty(), "a print plan without pages");
  PdfDocument(plan, fonts).write(out);
}

}  // namespace blockwright
