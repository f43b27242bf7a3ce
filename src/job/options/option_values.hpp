#pragma once

#include "blockwright/job/options.hpp"
#include "enum_words.hpp"

#include <algorithm>
#include <cmath>
#include <optional>
#include <type_traits>
#include <utility>

namespace blockwright {

// Between the type of a job's member and the items of an option: shape, items and back.

template <class T>
inline constexpr bool kIsOptional = false;
template <class T>
inline constexpr bool kIsOptional<std::optional<T>> = true;
template <class T>
inline constexpr bool kIsList = false;
template <class T>
inline constexpr bool kIsList<std::vector<T>> = true;

template <class T>
OptionShape shape_of() {
  using Kind = OptionShape::Kind;
  if constexpr (kIsOptional<T> || kIsList<T>) {
    OptionShape shape = shape_of<typename T::value_type>();
    shape.gaps = shape.count == OptionShape::Count::OneOrNone;
    shape.count = kIsList<T> ? OptionShape::Count::List : OptionShape::Count::OneOrNone;
    return shape;
  } else if constexpr (std::is_enum_v<T>) {
    OptionShape shape;
    for (const auto& row : enum_words<T>()) shape.words.push_back({row.word, row.means});
    return shape;
  } else if constexpr (std::is_same_v<T, std::string>) {
    return {};
  } else if constexpr (std::is_same_v<T, bool>) {
    return {.kind = Kind::Flag};
  } else if constexpr (std::is_same_v<T, int>) {
    return {.kind = Kind::WholeNumber};
  } else if constexpr (std::is_same_v<T, Length>) {
    return {.kind = Kind::Number, .unit = "mm"};
  } else if constexpr (std::is_same_v<T, Angle>) {
    return {.kind = Kind::Number, .unit = "degrees"};
  } else {
    static_assert(std::is_same_v<T, double>, "say here how such a value is given");
    return {.kind = Kind::Number};
  }
}

template <class T>
OptionItem item_of(const T& value) {
  if constexpr (kIsOptional<T>) {
    return value ? item_of(*value) : OptionItem(std::string());
  } else if constexpr (std::is_enum_v<T>) {
    const auto words = enum_words<T>();
    return std::string(std::ranges::find(words, value, &EnumWord<T>::value)->word);
  } else if constexpr (std::is_same_v<T, int>) {
    return static_cast<double>(value);
  } else if constexpr (std::is_same_v<T, Length>) {
    return value.mm();
  } else if constexpr (std::is_same_v<T, Angle>) {
    return value.degrees();
  } else {
    return value;
  }
}

/// Nothing for a word that is not known and for a number that is not whole where it must be. An
/// empty word is none of a value that may be missing.
template <class T>
std::optional<T> value_of(const OptionItem& item) {
  if constexpr (kIsOptional<T>) {
    if (item == OptionItem(std::string())) return std::optional<T>(std::in_place);
    const auto value = value_of<typename T::value_type>(item);
    return value ? std::optional<T>(value) : std::nullopt;
  } else if constexpr (std::is_enum_v<T>) {
    for (const auto& row : enum_words<T>()) {
      if (row.word == std::get<std::string>(item)) return row.value;
    }
    return std::nullopt;
  } else if constexpr (std::is_same_v<T, int>) {
    const double number = std::get<double>(item);
    const bool fits = std::abs(number) <= std::numeric_limits<int>::max();
    if (!fits || number != std::floor(number)) return std::nullopt;
    return static_cast<int>(number);
  } else if constexpr (std::is_same_v<T, Length>) {
    return Length::mm(std::get<double>(item));
  } else if constexpr (std::is_same_v<T, Angle>) {
    return Angle::degrees(std::get<double>(item));
  } else {
    return std::get<T>(item);
  }
}

template <class T>
OptionItems items_of(const T& value) {
  OptionItems items;
  if constexpr (kIsList<T>) {
    for (const auto& item : value) items.push_back(item_of(item));
  } else if constexpr (kIsOptional<T>) {
    if (value) items.push_back(item_of(*value));
  } else {
    items.push_back(item_of(value));
  }
  return items;
}

template <class T>
bool put_item(const OptionItem& item, T& into) {
  const auto value = value_of<T>(item);
  if (value) into = *value;
  return value.has_value();
}

template <class T>
bool put_items(const OptionItems& items, T& into) {
  if constexpr (kIsList<T>) {
    T list(items.size());
    for (std::size_t i = 0; i < items.size(); ++i) {
      if (!put_item(items[i], list[i])) return false;
    }
    into = std::move(list);
    return true;
  } else {
    return put_item(items.front(), into);
  }
}

/// An option that is given alone or with a text, bound to a member: none, an empty text, a text.
template <class Part>
Option flag_or_text(std::string_view name, const std::vector<Command>& commands,
                    std::optional<std::string> Part::*member, std::string_view help) {
  return {.name = name,
          .commands = commands,
          .changes = Changes::Nothing,
          .help = help,
          .rules = {},
          .shape = {.kind = OptionShape::Kind::FlagOrText},
          .get = [member](const JobParts& parts) -> OptionItems {
            const auto& value = std::get<Part*>(parts)->*member;
            if (!value || value->empty()) return {value.has_value()};
            return {*value};
          },
          .put =
              [member](const JobParts& parts, const OptionItems& items) {
                auto& value = std::get<Part*>(parts)->*member;
                const bool* const flag = std::get_if<bool>(&items.front());
                value = flag == nullptr ? std::optional(std::get<std::string>(items.front()))
                        : *flag         ? std::optional<std::string>("")
                                        : std::nullopt;
                return true;
              }};
}

/// An option bound to a member of a job's part.
template <class Part, class T>
Option option(std::string_view name, const std::vector<Command>& commands, T Part::*member,
              Changes changes, std::string_view help, const OptionRules& rules = {}) {
  return {
      .name = name,
      .commands = commands,
      .changes = changes,
      .help = help,
      .rules = rules,
      .shape = shape_of<T>(),
      .get = [member](const JobParts& parts) { return items_of(std::get<Part*>(parts)->*member); },
      .put =
          [member](const JobParts& parts, const OptionItems& items) {
            return put_items(items, std::get<Part*>(parts)->*member);
          }};
}

}  // namespace blockwright
