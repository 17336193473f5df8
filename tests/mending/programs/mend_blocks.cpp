// Mends blocks with a price for each stitch, which no file holds, so that a solver's answers can be laid beside them.
// Each block as it is read: width, height, limit, 1 where it is stacked; its rows of '.' and '#'; a price for each
// stitch, -1 where it stays. A line is written for each: price, pairs, squares, 1 where proved, the rows left unmended.
#include "mending/mend.hpp"

#include <iostream>
#include <string>

using namespace punchwright;

int main() {
  int width = 0;
  int height = 0;
  int stacked = 0;
  MendWishes wishes;
  while (std::cin >> width >> height >> wishes.limit >> stacked) {
    Grid drawing(width, height);
    for (int row = 0; row < height; ++row) {
      std::string text;
      std::cin >> text;
      drawing.set_row_text(row, text);
    }
    wishes.stacked = stacked != 0;
    wishes.prices.clear();
    for (int stitch = 0; stitch < width * height; ++stitch) {
      std::int32_t price = 0;
      std::cin >> price;
      wishes.prices.push_back(price < 0 ? never_changed : price);
    }
    const Mended mended = mend(drawing, wishes);
    std::cout << mended.price << ' ' << mended.pairs << ' ' << mended.squares << ' ' << (mended.proved ? 1 : 0);
    for (const Unmendable& left : mended.unmendable) {
      std::cout << ' ' << left.row;
    }
    std::cout << '\n';
  }
  return std::cin.eof() ? 0 : 1;
}
