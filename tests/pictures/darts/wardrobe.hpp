#pragma once

#include "blockwright/fit/wearing_ease.hpp"
#include "blockwright/style/style.hpp"

#include <string>
#include <vector>

namespace blockwright_pictures {

/// A demo person's block, and what the usual hold-backs need to know of her.
struct Person {
  blockwright::Pattern block;
  double cup = 0.0;                   ///< bust girth less underbust girth, mm
  blockwright::WornGirths body = {};  ///< her own, without ease
};

/// Drafts the block of "ondine-marsh" from FOLDER/ondine-marsh.json. Throws if that cannot be read.
Person person_of(const std::string& folder, const std::string& name);

/// Her pattern after some steps of a style.
blockwright::Pattern after(const Person& person, const std::vector<blockwright::StyleStep>& steps);

}  // namespace blockwright_pictures
