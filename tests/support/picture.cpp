#include "support/picture.hpp"

#include "support/run_tool.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <stdexcept>

namespace blockwright_tests {
namespace {

constexpr double kMmPerInch = 25.4;
constexpr double kWhite = 255.0;

}  // namespace

Picture Picture::read(const std::string& path, double dpi, double page_height) {
  std::ifstream file(path, std::ios::binary);
  std::string magic;
  int most = 0;
  Picture picture;
  file >> magic >> picture.columns_ >> picture.rows_ >> most;
  file.get();
  if (!file || magic != "P5" || most != 255) throw std::runtime_error("no PGM picture: " + path);
  picture.grey_.resize(static_cast<std::size_t>(picture.columns_) *
                       static_cast<std::size_t>(picture.rows_));
  for (unsigned char& pixel : picture.grey_) pixel = static_cast<unsigned char>(file.get());
  picture.mm_per_pixel_ = kMmPerInch / dpi;
  picture.height_ = page_height;
  return picture;
}

Picture::Moments Picture::moments(const Box& box) const {
  const auto column = [&](double x) {
    return std::clamp(static_cast<int>(std::lround(x / mm_per_pixel_)), 0, columns_);
  };
  const auto row = [&](double y) {
    return std::clamp(static_cast<int>(std::lround((height_ - y) / mm_per_pixel_)), 0, rows_);
  };
  Moments sum;
  for (int r = row(box.top); r < row(box.bottom); ++r) {
    for (int c = column(box.left); c < column(box.right); ++c) {
      const double black =
          1.0 - grey_[static_cast<std::size_t>(r) * static_cast<std::size_t>(columns_) +
                      static_cast<std::size_t>(c)] /
                    kWhite;
      sum.mass += black;
      sum.x += black * (c + 0.5) * mm_per_pixel_;
      sum.y += black * (height_ - (r + 0.5) * mm_per_pixel_);
    }
  }
  return sum;
}

double Picture::ink(const Box& box) const {
  return moments(box).mass * mm_per_pixel_ * mm_per_pixel_;
}

double Picture::ink() const { return ink({0.0, 0.0, columns_ * mm_per_pixel_, height_}); }

Point Picture::dark_centre(const Box& box) const {
  const Moments sum = moments(box);
  if (sum.mass < 1.0) throw std::runtime_error("nothing is drawn here");
  return {sum.x / sum.mass, sum.y / sum.mass};
}

Picture page_picture(const std::string& pdf, int page, double dpi, double page_height) {
  const TempFolder folder;
  const std::string stem = folder.path("page");
  const std::string number = std::to_string(page);
  const ToolResult drawn =
      run_tool("pdftoppm -r " + std::to_string(std::lround(dpi)) + " -gray -singlefile -f " +
               number + " -l " + number + " " + pdf + " " + stem);
  if (drawn.exit_code != 0 || !drawn.output.empty()) throw std::runtime_error(drawn.output);
  return Picture::read(stem + ".pgm", dpi, page_height);
}

}  // namespace blockwright_tests
