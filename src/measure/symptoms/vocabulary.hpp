#pragma once

#include "blockwright/measure/correction_table.hpp"

#include <cstdint>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace blockwright {

/// What a word of the fitting room means. Parts of the body first, then where on them, then what is
/// seen.
enum class Concept : unsigned {
  // Parts.
  Neck,
  Shoulder,
  Armhole,
  Underarm,
  Chest,
  Bust,
  BustPoint,
  UnderBust,
  Dart,
  Blades,
  Waist,
  Hem,
  Side,
  Centre,
  // Front or back.
  Front,
  Back,
  // Where on a part.
  Tip,
  Seam,
  AllRound,
  Across,
  Above,
  Below,
  One,
  Whole,
  // What is seen.
  Cuts,
  Gapes,
  Loose,
  Tight,
  High,
  Low,
  Long,
  Short,
  Wide,
  Narrow,
  Rides,
  Sags,
  Falls,
  Fold,
  Upright,
  Bubbles,
  Dimple,
  Forward,
  Backward,
  Hollow,
  Full,
  Flat,
  Round,
  Erect,
  Sloping,
  Square,
  Apart,
  Close,
  Reach,
  Petite,
  Count,  ///< stays last
};
inline constexpr unsigned kConceptCount = static_cast<unsigned>(Concept::Count);

/// Which meanings a saying has.
class Concepts {
 public:
  void add(Concept one) { bits_ |= bit(one); }
  [[nodiscard]] bool has(Concept one) const { return (bits_ & bit(one)) != 0; }
  void remove(Concept one) { bits_ &= ~bit(one); }
  [[nodiscard]] bool empty() const { return bits_ == 0; }

 private:
  static constexpr std::uint64_t bit(Concept one) {
    return std::uint64_t{1} << static_cast<unsigned>(one);
  }
  std::uint64_t bits_ = 0;
};
static_assert(kConceptCount <= 64);

constexpr bool is_part(Concept one) { return one <= Concept::Centre; }
constexpr bool is_face(Concept one) { return one == Concept::Front || one == Concept::Back; }
constexpr bool is_sight(Concept one) { return one >= Concept::Cuts; }

/// Words that mean the same.
struct Saying {
  ShortList<Concept, 4> means;
  std::string_view words;  ///< with "; " between
};
/// All words that are understood.
std::span<const Saying> vocabulary();
/// Words that are passed over wherever they are: "under the arm" is "under arm".
std::span<const std::string_view> articles();
/// Words that say nothing of a fault where no longer words hold them: "in", "too".
std::span<const std::string_view> empty_words();

/// Words that are named as not understood, at most.
inline constexpr std::size_t kMostUnknown = 5;

/// What was said, understood.
struct Understood {
  Concepts concepts;
  BodySide side = BodySide::Both;
  std::vector<std::string> unknown;
};
Understood understood(std::string_view said);

/// The items of a list with "; " between.
std::vector<std::string_view> listed(std::string_view words);
/// The words of a text in small letters, without what is at their ends: "gaping" and "gapes" are
/// one word.
struct SaidWord {
  std::string stem;
  std::string typed;
};
std::vector<SaidWord> said_words(std::string_view text);
/// The same without the articles.
std::vector<SaidWord> plain_words(std::string_view text);

}  // namespace blockwright
