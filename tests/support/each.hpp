#pragma once

#include "support/random.hpp"

#include <catch2/catch.hpp>

#include <iterator>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace blockwright {

/// Entries 0 to `count` - 1 of a loop. What fails during the turn of one, in the loop's body or in
/// what that calls, is reported with the entry's name.
template <class Entry, class Name>
class Each {
 public:
  Each(int count, Entry entry, Name name)
      : count_(count), entry_(std::move(entry)), name_(std::move(name)) {}

  class Turn {
   public:
    explicit Turn(Each& each) : each_(each) {}
    decltype(auto) operator*() {
      decltype(auto) entry = each_.entry_(number_);
      said_.reset();
      said_.emplace(Catch::MessageBuilder("INFO", CATCH_INTERNAL_LINEINFO, Catch::ResultWas::Info)
                    << each_.name_(number_, entry));
      return entry;
    }
    Turn& operator++() {
      ++number_;
      return *this;
    }
    bool operator==(std::default_sentinel_t) const { return number_ == each_.count_; }

   private:
    Each& each_;
    int number_ = 0;
    std::optional<Catch::ScopedMessage> said_;
  };
  Turn begin() { return Turn(*this); }
  [[nodiscard]] std::default_sentinel_t end() const { return {}; }

 private:
  int count_;
  Entry entry_;
  Name name_;
};

/// A list, or a reference to it.
template <class List>
struct Held {
  List list;
  [[nodiscard]] decltype(auto) operator()(int i) const { return *std::next(std::begin(list), i); }
};

inline std::string numbered(const std::string& list, int i) {
  return list + "[" + std::to_string(i) + "]";
}

/// The entries of a list, each named as "list[3]: front.waist", by its `name` if it has one.
///   for (const char* edge : each({"side", "armhole"})) ...
template <class List>
auto each(List&& list, const std::string& list_name = "list") {
  const int count = static_cast<int>(std::size(list));
  return Each(count, Held<List>{std::forward<List>(list)}, [list_name](int i, const auto& entry) {
    const std::string number = numbered(list_name, i) + ": ";
    if constexpr (requires { entry.name; }) {
      return number + Catch::Detail::stringify(entry.name);
    } else {
      return number + Catch::Detail::stringify(entry);
    }
  });
}
template <class T>
auto each(std::initializer_list<T> list) {
  return each(std::vector<T>(list));
}

/// Random numbers of one case of a loop.
class RandomCase : public Random {
 public:
  using Random::Random;
  int number = 0;
};

/// `count` cases that draw, one after the other, from one stream of random numbers.
///   for (Random& random : each_random(1000, 7)) ...
inline auto each_random(int count, unsigned seed) {
  const auto draw = [random = RandomCase(seed)](int i) mutable -> RandomCase& {
    random.number = i;
    return random;
  };
  return Each(count, draw, [count, seed](int i, const Random&) {
    return numbered("each_random(" + std::to_string(count) + ", " + std::to_string(seed) + ")", i);
  });
}

}  // namespace blockwright
