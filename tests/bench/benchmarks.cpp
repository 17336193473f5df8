// What the core costs: re-check, rows to knit, card, loading. Published in docs/performance.md.
#include "design/repeat_file.hpp"
#include "rows/rows.hpp"
#include "rules/findings.hpp"
#include "sheets/exports.hpp"
#include "support/builders.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace punchwright;

// A drawing as a designer leaves it: floats within the limit, a single-colour row now and then.
Document design(int width, int height) {
  Document document = blank_document(width, height);
  test::Dice dice(static_cast<std::uint64_t>(width * 10000 + height));
  for (int row = 0; row < height; ++row) {
    if (row % 12 == 11) {
      continue;
    }
    bool contrast = false;
    for (int column = 0; column < width;) {
      const int run = std::min(1 + dice.throw_one(4), width - column);
      for (int stitch = 0; stitch < run; ++stitch, ++column) {
        document.grid.set(column, row, contrast);
      }
      contrast = !contrast;
    }
    // Keep the run that goes round the edge short, whatever the dice said.
    document.grid.set(0, row, true);
    document.grid.set(width - 1, row, false);
  }
  document.piece.stitches = width == 24 ? 71 : 100;
  return document;
}

void sizes(benchmark::internal::Benchmark* bench) {
  bench->Args({24, 60})->Args({24, 240})->Args({200, 500})->Args({200, 1000})->Args({200, 2000});
}

Document design(const benchmark::State& state) {
  return design(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
}

const Profile& card_machine() {
  return *built_in_profile("bulky-card-24");
}

void recheck(benchmark::State& state) {
  const Document document = design(state);
  for (auto _ : state) {
    benchmark::DoNotOptimize(check(document, card_machine()));
  }
}
BENCHMARK(recheck)->Apply(sizes)->Unit(benchmark::kMicrosecond);

void derive_rows(benchmark::State& state) {
  const Document document = design(state);
  for (auto _ : state) {
    benchmark::DoNotOptimize(rows_to_knit(document, card_machine()));
  }
}
BENCHMARK(derive_rows)->Apply(sizes)->Unit(benchmark::kMicrosecond);

void card_pdf(benchmark::State& state) {
  const Document document = design(state);
  for (auto _ : state) {
    benchmark::DoNotOptimize(card_files(document, card_machine(), "card.pdf"));
  }
}
BENCHMARK(card_pdf)->Args({24, 60})->Args({24, 240})->Unit(benchmark::kMillisecond);

void load_document(benchmark::State& state) {
  const std::string text = write_repeat(design(state));
  for (auto _ : state) {
    benchmark::DoNotOptimize(read_repeat(text, "design.repeat"));
  }
}
BENCHMARK(load_document)->Apply(sizes)->Unit(benchmark::kMicrosecond);

} // namespace

BENCHMARK_MAIN();
