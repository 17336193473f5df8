// The sentences of the steps. Apart from the order of doing things, so that each can be read and corrected by itself.
#pragma once

#include "plan/steps.hpp"

namespace punchwright {

// "left", "right": as in "to the left" and "on the left".
[[nodiscard]] std::string_view word_for_side(Side side);
// The yarn's name on one line, or its key.
[[nodiscard]] std::string name_of_yarn(const Document& document, char key);
// "L36 and R35", or runs with their count: "L36–L30, R3 (8 needles)".
[[nodiscard]] std::string needles_words(const std::vector<Needle>& needles);
// "Knit 9 rows (rows 3 to 11), ending on the left."
[[nodiscard]] std::string knit_words(int first_row, int last_row, Side ends);
// "Knit 2 rows plain in Oat (rows 3 to 4), ending on the left."
[[nodiscard]] std::string plain_words(int first_row, int last_row, const std::string& yarn, Side ends);

// "Starting position: …", the carriage on that side.
[[nodiscard]] std::string starting_words(const Document& document, Side carriage);
// "Thread Ink into the second feeder (contrast); hang a peg on its end as a weight."
enum class FeederName { only, first, second };
[[nodiscard]] std::string threading_words(const std::string& yarn, FeederName feeder, bool peg);
// "Take Ink out of the feeder and cut it."
enum class TakenOut { hangs, cut, cut_far_side };
[[nodiscard]] std::string taking_out_words(const std::string& yarn, TakenOut how, Side carriage);
// "Push L36 and R35 back to working position: row 7 has no contrast stitch."
enum class PushedBack { no_contrast, first_rows, overlap, plain };
[[nodiscard]] std::string pushing_back_words(PushedBack why, int row, const std::vector<Needle>& needles, bool every);
// "Catch the float of row 3: …"
[[nodiscard]] std::string lifting_words(int row, const std::vector<Needle>& needles);

// One feeder, a row of one yarn: "Row 3: every needle knits Oat. …"
[[nodiscard]] std::string one_yarn_words(int row, const std::string& yarn, bool by_card, Side to);
// One feeder, one pass of two: "Row 3, first pass, Oat:"
[[nodiscard]] std::string pass_words(int row, bool first, const std::string& yarn);
// "push every needle back, then bring forward the same needles again: L3 R4."
[[nodiscard]] std::string bringing_words(const std::vector<Needle>& needles, bool push_back, bool again);
// "Set the carriage so that only the needles standing forward knit."
[[nodiscard]] std::string setting_words(bool forward_knit, bool by_card);

} // namespace punchwright
