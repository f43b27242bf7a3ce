#pragma once

#include "torso/cloth.hpp"

#include <vector>

namespace blockwright::torso {

/// Firm plain woven toile cloth. All ours, of the order that fabric testing gives for calico.
struct ClothKind {
  /// Along the threads, mN/mm (N/m). At the low end of such cloth: triangles this coarse are
  /// stiffer than what they stand for where the body is round in two directions.
  double stretch = 500.0;
  double shear = 60.0;  ///< mN/mm
  /// Of the stretch stiffness when pushed together: cloth gives way in buckles that are finer than
  /// the mesh.
  double pushed = 0.25;
  double bending = 15.0;   ///< mN mm
  double weight = 1.8e-3;  ///< mN/mm^2 (180 g/m^2)
  double contact = 1.0;    ///< of the body's skin, mN/mm^3
};

/// How the cloth is put on before it settles.
struct Start {
  double lifted = 0.0;  ///< mm above its place
  double off = 20.0;    ///< mm outside the skin
};

struct Relaxed {
  std::vector<Vec3> at;
  double energy = 0.0;  ///< mN mm (1e-6 J)
  int steps = 0;
  double last_move = 0.0;  ///< mm, of the point that moved most in the last step
};

/// Where the cloth comes to rest on the body from that start.
Relaxed relaxed(const Cloth& cloth, const Torso& body, const ClothKind& kind, const Start& start);

}  // namespace blockwright::torso
