// A card template as sheets: a cover, then every card in parts that fit the paper, split at row boundaries.
//
//     upper part   | o . o |
//                  +-------+  cut here         x  x   registration crosses, on both pages
//     lower part   |///////|  flap: goes under the upper part
//                  +-------+                   x  x
//                  | o o . |
//
// Where a card's margins have no room for what hands do, a list of it follows on pages of its own.
#pragma once

#include "design/result.hpp"
#include "sheets/card_drawing.hpp"
#include "sheets/page_frame.hpp"

#include <optional>
#include <string>
#include <vector>

namespace punchwright {

// Everything that a card's sheets are made from, worked out once.
struct CardJob {
  const Document& document;
  const Profile& profile; // with a card
  RowsToKnit rows;
  CardPlan plan;
  CardNotes notes;
};
[[nodiscard]] CardJob card_job(const Document& document, const Profile& profile);
[[nodiscard]] CardJob card_job(const Document& document, const Profile& profile, RowsToKnit rows);
[[nodiscard]] CardWords card_words(const CardJob& job, const Card& card);

// A part of a card on a page of its own; `first_row` to `last_row` counted through all cards.
struct CardPage {
  std::size_t card = 0; // index
  CardPart part;
  int number = 1; // of the card's parts, from the sheet's lower end
  int parts = 1;
  int first_row = 1;
  int last_row = 1;
  MarginColumn margin{};
};
// The parts of a card in zones of that height; from the sheet's lower end. Empty: not even one row fits.
[[nodiscard]] std::vector<CardPart> parts_of(const CardLayout& layout, double zone_height);

// Cover and card pages, for the paper and the correction of the document; of one card alone where one is named.
[[nodiscard]] Result<std::vector<Sheet>> card_pages(const CardJob& job, std::optional<int> only_card = {});

// Without paper and correction, which have no meaning to a cutting machine: one card on a sheet as large as it needs.
[[nodiscard]] Sheet card_on_its_own(const CardJob& job, const Card& card);

// What stands above a card's part or list: title, which page of how many, and the two rulers.
void add_head_and_rulers(std::vector<Shape>& shapes, const PageFrame& frame, const std::string& title,
                         const std::string& what, int number, int pages);
constexpr double head_room = 11.0; // mm that the title takes up

// The last pages: everything that is done with the hands, row by row, of the cards whose margins have no room for it.
// Without heads, which say how many pages there are; empty where the margins tell it all.
[[nodiscard]] std::vector<Group> list_of_actions(const CardJob& job, const std::vector<CardLayout>& layouts,
                                                 const std::vector<CardPage>& pages, const PageFrame& frame);

// The first page: what is printed, how to check its size, how to make the card.
[[nodiscard]] Sheet cover_sheet(const CardJob& job, const std::vector<CardPage>& pages, int list_pages,
                                const PageFrame& frame);

} // namespace punchwright
