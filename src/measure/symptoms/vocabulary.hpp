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
  Buttons,
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
  void add(const Concepts& others) { bits_ |= others.bits_; }
  [[nodiscard]] bool has(Concept one) const { return (bits_ & bit(one)) != 0; }
  void remove(Concept one) { bits_ &= ~bit(one); }
  [[nodiscard]] bool empty() const { return bits_ == 0; }
  friend bool operator==(const Concepts&, const Concepts&) = default;
  [[nodiscard]] bool has_any(bool (*of_kind)(Concept)) const { return !only(of_kind).empty(); }
  /// Those of one kind.
  [[nodiscard]] Concepts only(bool (*of_kind)(Concept)) const {
    Concepts some;
    for (unsigned i = 0; i < kConceptCount; ++i) {
      if (has(Concept{i}) && of_kind(Concept{i})) some.add(Concept{i});
    }
    return some;
  }

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

/// What a word does to the words around it.
enum class Speech {
  None,        ///< nothing: it has a meaning of its own, or none
  Not,         ///< what follows is not there
  Fine,        ///< nothing is wrong with it
  Enough,      ///< "not long enough" is short
  Wish,        ///< what follows is wanted, not seen
  Less,        ///< "less tight" is wanted where it is tight
  More,        ///< "more fitted" is wanted where it is loose
  Than,        ///< what follows is what it is judged by
  Trouble,     ///< something is wrong, not said what
  And,         ///< another clause may follow
  But,         ///< another clause follows
  Except,      ///< the same, of what is otherwise
  Sleeve,      ///< what a bodice does not have
  BelowWaist,  ///< where a bodice has ended
};
struct SpeechWords {
  Speech speech;
  std::string_view words;  ///< with "; " between
};
std::span<const SpeechWords> speech_words();
/// Words that are wished for rather than seen, where something is to be done: "longer".
std::span<const std::string_view> comparatives();
/// Words that are written here in another way: "isn't" is "not".
struct OtherForm {
  std::string_view typed;  ///< in small letters, without apostrophes
  std::string_view words;
};
std::span<const OtherForm> other_forms();

/// Two sights of which one is what mends the other: who wants it longer sees it short.
struct Mended {
  Concept wanted, seen;
};
std::span<const Mended> mended_sights();

/// The items of a list with "; " between.
std::vector<std::string_view> listed(std::string_view words);

}  // namespace blockwright
