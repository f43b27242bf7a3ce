#include "blockwright/base/error.hpp"
#include "blockwright/text/typeface.hpp"

#include <hb-subset.h>

namespace blockwright {
namespace {

// Tables that shaping needs but a PDF viewer does not: the text is shaped already. Dropping them
// also keeps the subset from growing by the glyphs that ligatures could lead to.
constexpr const char* kShapingTables[] = {"GSUB", "GPOS", "GDEF", "kern", "cmap", "name",
                                          "post", "OS/2", "DSIG", "gasp", "FFTM"};

using Input = std::shared_ptr<hb_subset_input_t>;

Input subset_input(const std::set<unsigned>& glyphs) {
  Input input(hb_subset_input_create_or_fail(), hb_subset_input_destroy);
  require(input != nullptr, "the font library has no memory");
  hb_set_t* kept = hb_subset_input_glyph_set(input.get());
  hb_set_add(kept, 0);
  for (const unsigned glyph : glyphs) hb_set_add(kept, glyph);
  hb_set_t* dropped = hb_subset_input_set(input.get(), HB_SUBSET_SETS_DROP_TABLE_TAG);
  for (const char* tag : kShapingTables) hb_set_add(dropped, hb_tag_from_string(tag, -1));
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
  const Input input = subset_input(glyphs);
  const std::shared_ptr<hb_subset_plan_t> plan(
      hb_subset_plan_create_or_fail(face_.get(), input.get()), hb_subset_plan_destroy);
  require(plan != nullptr, "the font cannot be subset");
  const std::shared_ptr<hb_face_t> face(hb_subset_plan_execute_or_fail(plan.get()),
                                        hb_face_destroy);
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
