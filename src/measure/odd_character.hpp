#pragma once

#include "reason.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace blockwright {

/// "U+00A0"
std::string code_point_name(char32_t code);

/// Whether nothing is to be seen of a character: spaces of every width, joiners, fillers, marks of
/// direction.
bool is_blank(char32_t code);

/// Why the character at byte `at` cannot stand between the tokens of a JSON text, where it is one
/// that looks like a plain one or like nothing at all, or is none; empty if it is nothing like
/// that.
std::optional<Reason> why_not_character(std::string_view text, std::size_t at);

/// Why the character at byte `at` cannot stand inside a JSON text in quotes; empty if it can.
std::optional<Reason> why_not_in_text(std::string_view text, std::size_t at);

/// "; it holds U+0430, which is no plain letter", where a word that should be plain ASCII looks as
/// if it were; empty otherwise.
std::string odd_letter_note(std::string_view word);

}  // namespace blockwright
