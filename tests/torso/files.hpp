#pragma once

#include "blockwright/measure/client.hpp"
#include "blockwright/pattern/pattern.hpp"
#include "torso/relax.hpp"

#include <filesystem>
#include <string>

namespace blockwright::torso {

/// A client file for the program with that session.
void write_client(const std::filesystem::path& file, const std::string& name,
                  const Session& session);

/// Edges and darts of the pieces in a pattern file of the program, of this version or of one that
/// calls a dart's peak its cap. Throws std::runtime_error if it cannot be read.
Pattern read_pattern(const std::filesystem::path& file);

/// Cloth and body as a picture in space (OBJ), to look at.
void write_cloth(const std::filesystem::path& file, const Cloth& cloth, const Relaxed& rest);
void write_body(const std::filesystem::path& file, const Torso& body);

}  // namespace blockwright::torso
