#include "blockwright/base/error.hpp"
#include "blockwright/text/typeface.hpp"

#include <hb-subset.h>

#include <algorithm>
#include <array>
#include <vector>

namespace blockwright {
namespace {

// Tables that shaping needs but a PDF viewer does not: the text is shaped already. Without them the
// subset does not grow by the glyphs that ligatures could lead to, and nobody reads which glyph
// each of thousands of characters has.
constexpr std::array kShapingTables = {
    HB_TAG('G', 'S', 'U', 'B'), HB_TAG('G', 'P', 'O', 'S'), HB_TAG('G', 'D', 'E', 'F'),
    HB_TAG('k', 'e', 'r', 'n'), HB_TAG('c', 'm', 'a', 'p'), HB_TAG('n', 'a', 'm', 'e'),
    HB_TAG('p', 'o', 's', 't'), HB_TAG('O', 'S', '/', '2'), HB_TAG('D', 'S', 'I', 'G'),
    HB_TAG('g', 'a', 's', 'p'), HB_TAG('F', 'F', 'T', 'M')};

using Face = std::shared_ptr<hb_face_t>;
using Input = std::shared_ptr<hb_subset_input_t>;

std::vector<hb_tag_t> tables_of(hb_face_t* face) {
  unsigned count = hb_face_get_table_tags(face, 0, nullptr, nullptr);
  std::vector<hb_tag_t> tags(count);
  hb_face_get_table_tags(face, 0, &count, tags.data());
  return tags;
}

Face for_drawing(hb_face_t* whole) {
  Face face(hb_face_builder_create(), hb_face_destroy);
  for (const hb_tag_t tag : tables_of(whole)) {
    if (std::ranges::find(kShapingTables, tag) != kShapingTables.end()) continue;
    const std::shared_ptr<hb_blob_t> table(hb_face_reference_table(whole, tag), hb_blob_destroy);
    hb_face_builder_add_table(face.get(), tag, table.get());
  }
  return face;
}

Input subset_input(const std::set<unsigned>& glyphs) {
  Input input(hb_subset_input_create_or_fail(), hb_subset_input_destroy);
  require(input != nullptr, "the font library has no memory");
  hb_set_t* kept = hb_subset_input_glyph_set(input.get());
  hb_set_add(kept, 0);
  for (const unsigned glyph : glyphs) hb_set_add(kept, glyph);
  hb_subset_input_set_flags(input.get(),
                            HB_SUBSET_FLAGS_NO_HINTING | HB_SUBSET_FLAGS_NOTDEF_OUTLINE);
  return input;
}

std::string bytes_of(hb_blob_t* taken) {
  const std::shared_ptr<hb_blob_t> blob(taken, hb_blob_destroy);
  unsigned size = 0;
  const char* data = hb_blob_get_data(taken, &size);
  return {data, size};
}

}  // namespace

FontSubset Typeface::subset(const std::set<unsigned>& glyphs) const {
  const Face drawn = for_drawing(face_.get());
  const Input input = subset_input(glyphs);
  const std::shared_ptr<hb_subset_plan_t> plan(
      hb_subset_plan_create_or_fail(drawn.get(), input.get()), hb_subset_plan_destroy);
  require(plan != nullptr, "the font cannot be subset");
  const Face face(hb_subset_plan_execute_or_fail(plan.get()), hb_face_destroy);
  require(face != nullptr, "the font cannot be subset");
  FontSubset subset;
  subset.program =
      bytes_of(is_cff() ? hb_face_reference_table(face.get(), HB_TAG('C', 'F', 'F', ' '))
                        : hb_face_reference_blob(face.get()));
  const hb_map_t* renumber = hb_subset_plan_old_to_new_glyph_mapping(plan.get());
  for (const unsigned glyph : glyphs) subset.renumber[glyph] = hb_map_get(renumber, glyph);
  return subset;
}

}  // namespace blockwright
