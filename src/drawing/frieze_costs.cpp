// What every place of the axes costs, by Fourier transforms along the columns: a level axis meets each row with another
// one, so that the sums over all rows are a convolution of the columns with each other, for all level axes at once.
#include "drawing/frieze_costs.hpp"

#include "design/wrap.hpp"

#include <algorithm>
#include <bit>
#include <cmath>
#include <cstdint>
#include <numbers>
#include <utility>

namespace punchwright {
namespace {

// A column as complex numbers, real and imaginary parts apart, so that a compiler takes several at once.
struct Series {
  std::vector<double> real;
  std::vector<double> imaginary;
  explicit Series(std::size_t length = 0) : real(length, 0), imaginary(length, 0) {}
};

// The transform of series of a length that is a power of two (J. W. Cooley and J. W. Tukey, Math. Comp. 19, 1965; forth
// in the order of W. M. Gentleman and G. Sande, 1966, so that nothing has to be sorted). The sums below are whole
// numbers of less than a million, far from where doubles would round them wrongly.
class Transform {
public:
  explicit Transform(std::size_t length) : length_(length), turns_(length) {
    for (std::size_t half = 1; half < length; half *= 2) {
      for (std::size_t place = 0; place < half; ++place) {
        const double angle = -std::numbers::pi * static_cast<double>(place) / static_cast<double>(half);
        turns_.real[half + place] = std::cos(angle);
        turns_.imaginary[half + place] = std::sin(angle);
      }
    }
  }
  [[nodiscard]] std::size_t length() const { return length_; }

  // Leaves the frequencies in an order of its own.
  void forth(Series& series) const {
    for (std::size_t half = length_ / 2; half > 0; half /= 2) {
      each_pair(
          series, half,
          [](double& low, double& low_across, double& high, double& high_across, double turn, double turn_across) {
            const double rest = low - high;
            const double rest_across = low_across - high_across;
            low += high;
            low_across += high_across;
            high = rest * turn - rest_across * turn_across;
            high_across = rest * turn_across + rest_across * turn;
          });
    }
  }

  // The real parts of the series that has these frequencies: rounded, since they are whole numbers.
  [[nodiscard]] std::vector<std::int64_t> whole_numbers_back(Series series) const {
    for (std::size_t half = 1; half < length_; half *= 2) {
      each_pair(
          series, half,
          [](double& low, double& low_across, double& high, double& high_across, double turn, double turn_across) {
            const double other = high * turn + high_across * turn_across;
            const double other_across = high_across * turn - high * turn_across;
            high = low - other;
            high_across = low_across - other_across;
            low += other;
            low_across += other_across;
          });
    }
    std::vector<std::int64_t> numbers(length_);
    for (std::size_t place = 0; place < length_; ++place) {
      numbers[place] = std::llround(series.real[place] / static_cast<double>(length_));
    }
    return numbers;
  }

private:
  // Numbers that lie `half` apart, with the turn between them.
  template <class Each> void each_pair(Series& series, std::size_t half, Each&& each) const {
    const double* const turn = turns_.real.data() + half;
    const double* const turn_across = turns_.imaginary.data() + half;
    for (std::size_t from = 0; from < length_; from += 2 * half) {
      double* const low = series.real.data() + from;
      double* const low_across = series.imaginary.data() + from;
      for (std::size_t place = 0; place < half; ++place) {
        each(low[place], low_across[place], low[place + half], low_across[place + half], turn[place],
             turn_across[place]);
      }
    }
  }

  std::size_t length_;
  Series turns_; // for each half from that number on
};

void add_product(Series& sum, const Series& one, const Series& other, double times) {
  for (std::size_t place = 0; place < sum.real.size(); ++place) {
    sum.real[place] += times * (one.real[place] * other.real[place] - one.imaginary[place] * other.imaginary[place]);
    sum.imaginary[place] +=
        times * (one.real[place] * other.imaginary[place] + one.imaginary[place] * other.real[place]);
  }
}

class Axes {
public:
  explicit Axes(const Grid& strip)
      : strip_(strip), width_(strip.width()), height_(strip.height()),
        transform_(std::bit_ceil(static_cast<std::size_t>(std::max(1, 2 * strip.height())))),
        contrast_below_(static_cast<std::size_t>(strip.height()) + 1, 0) {
    for (int row = 0; row < height_; ++row) {
      const auto words = strip.row(row);
      int contrast = 0;
      for (const Grid::Word word : words) {
        contrast += std::popcount(word);
      }
      contrast_below_[static_cast<std::size_t>(row) + 1] = contrast_below_[static_cast<std::size_t>(row)] + contrast;
    }
  }

  // A pair of stitches that differ costs one, whichever becomes the other; so does contrast whose partner lies beyond
  // the strip: all contrast, but for what meets contrast.
  [[nodiscard]] std::vector<int> of_half_turns() const {
    std::vector<Series> columns;
    for (int column = 0; column < width_; ++column) {
      columns.push_back(transformed([&](int row) { return std::pair(strip_.at(column, row) ? 1 : 0, 0); }));
    }
    const auto add_to = [&](int upright, Series& sum) {
      for (int column = 0; column < width_; ++column) {
        const int other = round_edge(upright - column, width_);
        if (column <= other) {
          add_product(sum, columns[place(column)], columns[place(other)], column < other ? 2 : 1);
        }
      }
    };
    return table(add_to, [&](int, std::int64_t met) { return contrast_below_.back() - met; });
  }

  // Two stitches that an upright mirror exchanges have x = -1, 0 or 1: both main, one of each, both contrast. With the
  // two that the level axis brings, by majority, they cost 1 - x x' + (x = 0 and x' = 0). That is the real part of
  // 1 - (x + iz)(x' + iz') with z = 1 where x = 0. Each four are counted four times.
  // `aside`: columns by which the partners lie aside.
  [[nodiscard]] std::vector<int> of_mirrors(int aside) const {
    std::vector<Series> columns(place(width_)); // of a pair the lower one
    const auto add_to = [&](int upright, Series& sum) {
      const auto lower = [&](int column) { return std::min(column, round_edge(upright - column, width_)); };
      for (int column = 0; column < width_; ++column) {
        if (lower(column) == column) {
          columns[place(column)] = mirrored_pair(column, round_edge(upright - column, width_));
        }
      }
      for (int column = 0; column < width_; ++column) {
        if (lower(column) == column) { // the other of the pair meets the same
          const bool alone = round_edge(upright - column, width_) == column;
          add_product(sum, columns[place(column)], columns[place(lower((column + aside) % width_))], alone ? 1 : 2);
        }
      }
    };
    return table(add_to, [&](int level, std::int64_t met) {
      const int first = std::max(0, level - height_ + 1);
      const int last = std::min(height_ - 1, level);
      const std::int64_t within = contrast_below_[place(last) + 1] - contrast_below_[place(first)];
      return (std::int64_t{width_} * (last - first + 1) - met) / 4 + contrast_below_.back() - within;
    });
  }

private:
  [[nodiscard]] static std::size_t place(int number) { return static_cast<std::size_t>(number); }

  template <class At> [[nodiscard]] Series transformed(At&& at) const {
    Series series(transform_.length());
    for (int row = 0; row < height_; ++row) {
      const auto [real, imaginary] = at(row);
      series.real[place(row)] = real;
      series.imaginary[place(row)] = imaginary;
    }
    transform_.forth(series);
    return series;
  }

  [[nodiscard]] Series mirrored_pair(int column, int other) const {
    return transformed([&](int row) {
      const int both = (strip_.at(column, row) ? 1 : 0) + (strip_.at(other, row) ? 1 : 0);
      return std::pair(both - 1, both == 1 ? 1 : 0);
    });
  }

  template <class AddTo, class Cost> [[nodiscard]] std::vector<int> table(AddTo&& add_to, Cost&& cost) const {
    const int levels = std::max(0, 2 * height_ - 1);
    std::vector<int> costs(place(width_) * place(levels));
    for (int upright = 0; upright < width_; ++upright) {
      Series sum(transform_.length());
      add_to(upright, sum);
      const auto met = transform_.whole_numbers_back(std::move(sum));
      for (int level = 0; level < levels; ++level) {
        costs[place(level) * place(width_) + place(upright)] = static_cast<int>(cost(level, met[place(level)]));
      }
    }
    return costs;
  }

  const Grid& strip_;
  int width_;
  int height_;
  Transform transform_;
  std::vector<std::int64_t> contrast_below_; // in the rows below each
};

} // namespace

std::vector<int> costs_of_axes(const Grid& strip, FriezeGroup group) {
  const Axes axes(strip);
  if (group == FriezeGroup::p2) {
    return axes.of_half_turns();
  }
  return axes.of_mirrors(group == FriezeGroup::p2mg ? strip.width() / 2 : 0);
}

} // namespace punchwright
