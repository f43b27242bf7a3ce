#pragma once

#include "blockwright/geometry/box.hpp"
#include "blockwright/geometry/path.hpp"

#include <vector>

namespace blockwright_pictures {

/// The stretches of a path that lie inside a box, in the order of travel.
std::vector<blockwright::Path> inside(const blockwright::Path& path, const blockwright::Box& box);

/// What of `path` is not a stroke of `other` too, within 1e-6 mm.
std::vector<blockwright::Path> differing(const blockwright::Path& path,
                                         const blockwright::Path& other);

}  // namespace blockwright_pictures
