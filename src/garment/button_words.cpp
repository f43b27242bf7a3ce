#include "button_words.hpp"

#include "blockwright/garment/opening.hpp"

#include <string>

namespace blockwright {
namespace {

Wording counted(const Opening& opening, const char* what) {
  return std::to_string(opening.buttons) + " " + what;
}

}  // namespace

Wording buttons_line(const Opening& opening) {
  return counted(opening, "buttons, ") + Length::mm(opening.button) +
         " across, for the centre front";
}

Wording fold_facings(const Opening&) {
  return "interface the front facings; fold them to the right side along the front edges to sew "
         "their upper and lower ends, turn them in and press";
}

Wording set_buttons(const Opening& opening) {
  return "work " + counted(opening, "buttonholes in the right front, ") +
         Length::mm(opening.button + kButtonThickness) + " long and " +
         Length::mm(opening.spacing) +
         " apart; lay centre front on centre front and sew the buttons to the left one";
}

}  // namespace blockwright
