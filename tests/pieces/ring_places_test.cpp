// Places on the bed: the motif goes on across every seam, found by trying every place of every piece.
#include "design/wrap.hpp"
#include "pieces/ring_places.hpp"
#include "pieces/yokes.hpp"

#include <algorithm>
#include <functional>
#include <random>

using namespace punchwright;
using namespace punchwright::test;

namespace {

Document tier_of(int width) {
  return blank_document(width, 4);
}

const Profile& bulky() {
  return *built_in_profile("bulky-card-24");
}

int visible_column(const Document& tier, const Profile& profile, const PieceOnBed& piece, int edge, bool left) {
  const Document document = document_of_piece(tier, piece);
  const int position = left ? piece.last.position - edge : piece.first.position + edge;
  return Placement(document, profile).column_of(Needle{position});
}

} // namespace

TEST_CASE("columns of a piece on a card machine") {
  // 90 stitches on L45 to R45, seen on the knit side: columns 17 to 8 of 24, with a seam stitch on each side.
  const RingOnBed ring = ring_on_bed(tier_of(24), bulky(), {90}, 1, YokeSeams::continuous);
  const PieceOnBed& piece = ring.pieces.at(0);
  CHECK(name_of(piece.first) == "L45");
  CHECK(name_of(piece.last) == "R45");
  CHECK(piece.left_column + 1 == 17);
  CHECK(piece.right_column + 1 == 8);
  CHECK_FALSE(ring.seams.at(0).meets); // 88 is no multiple of 24
  CHECK(ring.mend == "88 visible stitches all round are no multiple of 24");
}

TEST_CASE("a ring that closes meets at every seam, as near to the middle of the bed as can be") {
  std::mt19937 dice(6);
  const auto from = [&dice](int least, int most) { return std::uniform_int_distribution<int>(least, most)(dice); };
  for (int round = 0; round < 60; ++round) {
    const int width = std::vector<int>{4, 6, 8, 12}[static_cast<std::size_t>(from(0, 3))];
    const int edge = from(0, 2);
    std::vector<int> stitches{from(20, 112), from(20, 112), 0};
    stitches[2] = 2 * edge + width * from(3, 8) - (stitches[0] + stitches[1] - 4 * edge) % width;
    const Document tier = tier_of(width);
    const RingOnBed ring = ring_on_bed(tier, bulky(), stitches, edge, YokeSeams::continuous);
    int broken = 0;
    long long off = 0;
    for (std::size_t piece = 0; piece < 3; ++piece) {
      const PieceOnBed& there = ring.pieces[piece];
      CHECK(there.first >= bulky().leftmost());
      CHECK(there.last <= bulky().rightmost());
      CHECK(there.last.position - there.first.position + 1 == stitches[piece]);
      const int next = visible_column(tier, bulky(), ring.pieces[(piece + 1) % 3], edge, true);
      broken += round_edge(visible_column(tier, bulky(), there, edge, false) + 1, width) == next ? 0 : 1;
      const long long away = there.first.position - centred_first_needle(stitches[piece]).position;
      off += away * away;
    }
    CHECK(broken == std::ranges::count(ring.seams, false, &SeamMeeting::meets));
    // Every start of every piece.
    int fewest = 3;
    long long nearest = 1'000'000;
    const Placement placement(tier, bulky());
    std::vector<int> first(3);
    const std::function<void(std::size_t)> choose = [&](std::size_t piece) {
      if (piece == 3) {
        int missed = 0;
        long long far = 0;
        for (std::size_t one = 0; one < 3; ++one) {
          const std::size_t next = (one + 1) % 3;
          const int after = placement.column_of(Needle{first[one] + edge}) + 1;
          missed +=
              round_edge(after, width) == placement.column_of(Needle{first[next] + stitches[next] - 1 - edge}) ? 0 : 1;
          const long long away = first[one] - centred_first_needle(stitches[one]).position;
          far += away * away;
        }
        if (missed < fewest || (missed == fewest && far < nearest)) {
          fewest = missed;
          nearest = far;
        }
        return;
      }
      const int middle = centred_first_needle(stitches[piece]).position;
      for (int start = middle - width; start <= middle + width; ++start) {
        if (start >= -56 && start + stitches[piece] <= 56) {
          first[piece] = start;
          choose(piece + 1);
        }
      }
    };
    choose(0);
    CAPTURE(width);
    CAPTURE(stitches);
    CHECK(broken == fewest);
    CHECK(off == nearest);
  }
}

TEST_CASE("what cannot meet falls into one seam") {
  const RingOnBed ring = ring_on_bed(tier_of(12), bulky(), {50, 47, 61, 40}, 1, YokeSeams::free);
  CHECK(std::ranges::count(ring.seams, false, &SeamMeeting::meets) == 1);
  CHECK(ring.mend == "190 visible stitches all round are no multiple of 12");
}

TEST_CASE("a bed that is full leaves no room to move, and says so") {
  const RingOnBed ring = ring_on_bed(tier_of(24), bulky(), {112, 112, 106}, 1, YokeSeams::continuous); // 324 visible
  CHECK(std::ranges::count(ring.seams, false, &SeamMeeting::meets) > 1); // closing the ring would mend one of them
  CHECK(ring.mend == "324 visible stitches all round are no multiple of 24, and the bed of 112 needles leaves too "
                     "little room to move the work");
  const RingOnBed stuck = ring_on_bed(tier_of(24), bulky(), {112, 112, 94}, 1, YokeSeams::continuous); // 312 = 13 × 24
  CHECK(std::ranges::count(stuck.seams, false, &SeamMeeting::meets) > 0);
  CHECK(stuck.mend == "the bed of 112 needles leaves too little room to move the work");
}

TEST_CASE("centred: the middle of the repeat at the middle of each piece, and seams alike") {
  const Document tier = tier_of(24);
  const RingOnBed ring = ring_on_bed(tier, bulky(), {90, 60, 90, 60}, 1, YokeSeams::centred);
  for (const PieceOnBed& piece : ring.pieces) {
    const int count = piece.last.position - piece.first.position + 1;
    const Placement placement(tier, bulky());
    // On the knit side columns go from right to left along the bed.
    CHECK(placement.column_of(Needle{piece.first.position + count / 2 - 1}) == 12);
    CHECK(placement.column_of(Needle{piece.first.position + count / 2}) == 11);
  }
  CHECK(ring.mend.empty());
  const RingOnBed alike = ring_on_bed(tier, bulky(), {90, 90}, 1, YokeSeams::centred);
  CHECK(std::ranges::all_of(alike.seams, &SeamMeeting::alike));
  const RingOnBed unlike = ring_on_bed(tier, bulky(), {90, 60, 88, 60}, 1, YokeSeams::centred);
  CHECK_FALSE(std::ranges::all_of(unlike.seams, &SeamMeeting::alike));
  CHECK(unlike.mend ==
        "the seams are not alike: pieces of 90 and 88 stitches, next but one to each other, would have to "
        "be equal or differ by a multiple of 48");
  const RingOnBed odd = ring_on_bed(tier, bulky(), {91}, 1, YokeSeams::centred);
  CHECK(odd.mend ==
        "a piece of 91 stitches has the middle of the repeat half a stitch beside its own; with 90 stitches it would "
        "lie there");
  // With a repeat of 12 an even count lies there only where the bed has room to move it by six needles.
  const Document half = tier_of(12);
  int too_wide = 0;
  for (int count = 3; count <= 112; ++count) {
    const std::string mend = ring_on_bed(half, bulky(), {count}, 1, YokeSeams::centred).mend;
    if (mend.empty()) {
      continue;
    }
    CAPTURE(mend);
    const auto at = mend.find("; ");
    REQUIRE(at != std::string::npos);
    const int named = std::stoi(mend.substr(mend.find_first_of("0123456789", at)));
    CHECK(ring_on_bed(half, bulky(), {named}, 1, YokeSeams::centred).mend.empty());
    too_wide += count % 2 == 0 ? 1 : 0;
  }
  CHECK(too_wide > 0);
}

TEST_CASE("counts that can't be centred: those that are laid on the bed beside their middle") {
  for (const int width : {1, 3, 4, 8, 12, 24}) {
    const Document tier = tier_of(width);
    for (const int edge : {0, 1, 3}) {
      for (const bool card : {true, false}) {
        const Profile& profile = *built_in_profile(card ? "bulky-card-24" : "plastic-by-hand");
        const std::vector<bool> barred = counts_not_centred(tier, profile, edge);
        REQUIRE(barred.size() == static_cast<std::size_t>(profile.needles) + 1);
        for (int count = 2 * edge + 1; count <= profile.needles; ++count) {
          const PieceOnBed piece = ring_on_bed(tier, profile, {count}, edge, YokeSeams::centred).pieces.front();
          const bool centred = shows_middle_at_its_own(piece.left_column, count - 2 * edge, width);
          CAPTURE(width);
          CAPTURE(edge);
          CAPTURE(count);
          CHECK(barred[static_cast<std::size_t>(count)] == !centred);
        }
      }
    }
  }
}

TEST_CASE("by hand the pieces stand in the middle, and the first column is chosen") {
  const Profile& plastic = *built_in_profile("plastic-by-hand");
  const Document tier = tier_of(20);
  const RingOnBed ring = ring_on_bed(tier, plastic, {98, 66, 98, 66}, 1, YokeSeams::continuous); // 320 visible
  for (std::size_t piece = 0; piece < 4; ++piece) {
    const PieceOnBed& there = ring.pieces[piece];
    CHECK(there.first == centred_first_needle(there.last.position - there.first.position + 1));
    REQUIRE(there.first_column);
    CHECK(ring.seams[piece].meets);
    const int next = visible_column(tier, plastic, ring.pieces[(piece + 1) % 4], 1, true);
    CHECK(round_edge(visible_column(tier, plastic, there, 1, false) + 1, 20) == next);
  }
}
