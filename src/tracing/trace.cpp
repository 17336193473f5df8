// Darkness, split and emphasis make for each stitch a wish between 0 (main) and 1 (contrast); the price of going
// against it is what it costs to mend that stitch.
#include "tracing/trace.hpp"

#include "design/wrap.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

namespace punchwright {
namespace {

// A field of numbers, one a stitch, row by row from the lowest.
struct Field {
  int columns = 0;
  int rows = 0;
  std::vector<double> values;

  [[nodiscard]] double& at(int column, int row) {
    return values[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column)];
  }
  [[nodiscard]] double at(int column, int row) const {
    return values[static_cast<std::size_t>(row) * static_cast<std::size_t>(columns) + static_cast<std::size_t>(column)];
  }
};

Field darkness_of(const std::vector<double>& light, int columns, const TraceWishes& wishes) {
  Field field{columns, static_cast<int>(light.size()) / columns, light};
  for (int row = 0; row < field.rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const double lit =
          light[static_cast<std::size_t>(row * columns + (wishes.mirrored ? columns - 1 - column : column))];
      field.at(column, row) = wishes.light_is_contrast ? lit : 1 - lit;
    }
  }
  return field;
}

// Towards the mean of the nine stitches around and on it, or away from it. Sideways the drawing goes round.
Field emphasised(const Field& field, double emphasis) {
  if (emphasis == 0) {
    return field;
  }
  Field out = field;
  for (int row = 0; row < field.rows; ++row) {
    for (int column = 0; column < field.columns; ++column) {
      double mean = 0;
      for (int up = -1; up <= 1; ++up) {
        for (int aside = -1; aside <= 1; ++aside) {
          mean += field.at(round_edge(column + aside, field.columns), std::clamp(row + up, 0, field.rows - 1));
        }
      }
      mean /= 9;
      const double off = field.at(column, row) - mean;
      out.at(column, row) = std::clamp(field.at(column, row) + (emphasis > 0 ? 2 : 1) * emphasis * off, 0.0, 1.0);
    }
  }
  return out;
}

// Darkness so that the split lies in the middle, between 0 and 1 still.
double around_split(double darkness, double split) {
  return darkness < split ? darkness / (2 * split) : 0.5 + (darkness - split) / (2 * (1 - split));
}

// The rows of a drawing, each nearest to its wishes.
class Tracer {
public:
  Tracer(int columns, int rows, const TraceWishes& wishes) : limit_(wishes.limit), mender_(columns, wishes.limit) {
    answer_.drawing = Grid(columns, rows);
    for (const Area& area : wishes.kept) {
      protect(kept_, answer_.drawing, area);
    }
  }

  // `wish` below 0.5 wants main, above it contrast; the further from it the dearer is the other.
  void lay(int row, const std::vector<double>& wish) {
    nearest_.clear();
    prices_.clear();
    std::array<std::int64_t, 2> single{0, 0}; // price of a row of main alone, of contrast alone
    std::array<bool, 2> allowed{true, true};
    Grid& drawing = answer_.drawing;
    for (int column = 0; column < drawing.width(); ++column) {
      const double off = std::clamp(std::abs(wish[static_cast<std::size_t>(column)] - 0.5) * 2, 0.0, 1.0);
      const bool contrast = wish[static_cast<std::size_t>(column)] > 0.5;
      const auto price = static_cast<std::int32_t>(std::lround(off * dearest_change));
      nearest_.push_back(contrast ? 1 : 0);
      prices_.push_back(is_kept(column, row) ? never_changed : price);
      const std::size_t against = contrast ? 0 : 1;
      single[against] += price;
      allowed[against] = allowed[against] && !is_kept(column, row);
      drawing.set(column, row, contrast);
    }
    if (!needs_mending(drawing, row, limit_)) {
      return;
    }
    mender_.set_row(nearest_, prices_, {});
    const bool mendable = mender_.solve(false);
    std::int64_t least = mendable ? mender_.cost().price : -1;
    std::vector<char> stitches = nearest_;
    if (mendable) {
      stitches.assign(mender_.stitches().begin(), mender_.stitches().end());
    }
    for (const std::size_t which : {0U, 1U}) { // no yarn floats in a row of a single colour
      if (allowed[which] && (least < 0 || single[which] < least)) {
        least = single[which];
        stitches.assign(stitches.size(), static_cast<char>(which));
      }
    }
    if (least < 0) {
      answer_.unmendable.push_back({row, 0, drawing.width() - 1});
    }
    for (int column = 0; column < drawing.width(); ++column) {
      const auto place = static_cast<std::size_t>(column);
      drawing.set(column, row, stitches[place] != 0);
      answer_.moved += stitches[place] != nearest_[place] ? 1 : 0;
    }
  }

  [[nodiscard]] Traced& answer() { return answer_; }

private:
  [[nodiscard]] bool is_kept(int column, int row) const {
    const auto place = static_cast<std::size_t>(row * answer_.drawing.width() + column);
    return !kept_.prices.empty() && kept_.prices[place] == never_changed;
  }

  int limit_;
  RowMender mender_;
  MendWishes kept_;           // only for what stays as the picture has it
  std::vector<char> nearest_; // of the row in hand
  std::vector<std::int32_t> prices_;
  Traced answer_;
};

void lay_each(const Field& wish, bool dithered, Tracer& tracer) {
  std::vector<double> row_wish(static_cast<std::size_t>(wish.columns));
  for (int row = 0; row < wish.rows; ++row) {
    for (int column = 0; column < wish.columns; ++column) {
      const double threshold = dithered ? (bayer_step(column, row) + 0.5) / 64 : 0.5;
      row_wish[static_cast<std::size_t>(column)] = 0.5 + (wish.at(column, row) - threshold) / (dithered ? 2 : 1);
    }
    tracer.lay(row, row_wish);
  }
}

// From the top row downwards. Along the row what is too much goes on as if there were no limit for floats, which gives
// the row's wishes; what goes to the row below is reckoned from the stitches as they are laid.
void lay_diffused(const Field& wish, Tracer& tracer) {
  const int columns = wish.columns;
  std::vector<double> handed(static_cast<std::size_t>(columns)); // from the row above
  std::vector<double> row_wish(static_cast<std::size_t>(columns));
  for (int row = wish.rows - 1; row >= 0; --row) {
    const bool rightwards = (wish.rows - 1 - row) % 2 == 0;
    const auto column_at = [&](int step) { return rightwards ? step : columns - 1 - step; };
    double carried = 0;
    for (int step = 0; step < columns; ++step) {
      const int column = column_at(step);
      const double value = wish.at(column, row) + handed[static_cast<std::size_t>(column)] + carried;
      row_wish[static_cast<std::size_t>(column)] = value;
      carried = 7.0 / 16 * std::clamp(value - (value > 0.5 ? 1 : 0), -1.0, 1.0);
    }
    tracer.lay(row, row_wish);
    std::vector<double> below(static_cast<std::size_t>(columns));
    carried = 0;
    for (int step = 0; step < columns; ++step) {
      const int column = column_at(step);
      const double value = wish.at(column, row) + handed[static_cast<std::size_t>(column)] + carried;
      const double error = std::clamp(value - (tracer.answer().drawing.at(column, row) ? 1 : 0), -1.0, 1.0);
      carried = 7.0 / 16 * error;
      const int ahead = rightwards ? 1 : -1;
      for (const auto& [aside, part] : {std::pair{-ahead, 3.0}, std::pair{0, 5.0}, std::pair{ahead, 1.0}}) {
        below[static_cast<std::size_t>(round_edge(column + aside, columns))] += part / 16 * error;
      }
    }
    handed = std::move(below);
  }
}

} // namespace

double otsu_split(const std::vector<double>& darkness) {
  constexpr int steps = 256;
  std::array<double, steps> count{};
  for (const double value : darkness) {
    count[static_cast<std::size_t>(std::clamp(static_cast<int>(value * steps), 0, steps - 1))] += 1;
  }
  const auto whole = static_cast<double>(darkness.size());
  double whole_sum = 0;
  for (int step = 0; step < steps; ++step) {
    whole_sum += step * count[static_cast<std::size_t>(step)];
  }
  double below = 0;
  double below_sum = 0;
  double best = 0;
  double first = 0; // of equally good splits the middle is taken
  double last = 0;
  for (int step = 0; step + 1 < steps; ++step) {
    below += count[static_cast<std::size_t>(step)];
    below_sum += step * count[static_cast<std::size_t>(step)];
    if (below == 0 || below == whole) {
      continue;
    }
    const double apart = below_sum / below - (whole_sum - below_sum) / (whole - below);
    const double between = below * (whole - below) * apart * apart; // the variance between the classes, times whole²
    if (between > best * (1 + 1e-12)) {
      best = between;
      first = last = step + 1;
    } else if (between >= best * (1 - 1e-12) && best > 0) {
      last = step + 1;
    }
  }
  return best > 0 ? (first + last) / 2 / steps : 0.5;
}

int bayer_step(int column, int row) {
  // The bits of x ^ y and y, interleaved, the lowest first.
  const int x = column % 8;
  const int y = row % 8;
  int step = 0;
  for (int bit = 0; bit < 3; ++bit) {
    step = step << 2 | ((x ^ y) >> bit & 1) << 1 | (y >> bit & 1);
  }
  return step;
}

Traced trace(const std::vector<double>& light, int columns, const TraceWishes& wishes) {
  const Field darkness = emphasised(darkness_of(light, columns, wishes), wishes.emphasis);
  const double split = std::clamp(wishes.split.value_or(otsu_split(darkness.values)), 0.01, 0.99);
  Field wish = darkness;
  for (double& value : wish.values) {
    value = around_split(value, split);
  }
  Tracer tracer(columns, darkness.rows, wishes);
  if (wishes.shading == Shading::diffusion) {
    lay_diffused(wish, tracer);
  } else {
    lay_each(wish, wishes.shading == Shading::dither, tracer);
  }
  Traced traced = std::move(tracer.answer());
  traced.split = split;
  std::ranges::sort(traced.unmendable, {}, &Unmendable::row);
  double off = 0;
  for (int row = 0; row < wish.rows; ++row) {
    for (int column = 0; column < columns; ++column) {
      const double difference = wish.at(column, row) - (traced.drawing.at(column, row) ? 1 : 0);
      off += difference * difference;
    }
  }
  traced.error = wish.values.empty() ? 0 : off / static_cast<double>(wish.values.size());
  return traced;
}

} // namespace punchwright
