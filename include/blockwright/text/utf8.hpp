#pragma once

#include "blockwright/base/utf8.hpp"

#include <string>
#include <string_view>

namespace blockwright {

/// Whether nothing is to be seen of a character: spaces of every width, joiners, fillers, marks of
/// direction.
bool is_blank(char32_t code);

/// "; it holds U+0430, which is no plain letter", where a word that should be plain ASCII looks as
/// if it were; empty otherwise.
std::string odd_letter_note(std::string_view word);

}  // namespace blockwright
