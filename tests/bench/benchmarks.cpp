// What the core costs: re-check, rows to knit, card, loading. Published in docs/performance.md.
#include "design/repeat_file.hpp"
#include "diagnosis/diagnosis.hpp"
#include "drawing/frieze.hpp"
#include "files/files.hpp"
#include "mending/mend.hpp"
#include "pieces/yoke_plan.hpp"
#include "plan/knit_steps.hpp"
#include "rows/rows.hpp"
#include "rules/findings.hpp"
#include "sheets/exports.hpp"
#include "support/builders.hpp"
#include "tracing/best_place.hpp"

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

// Which symmetry the drawing has: with none; blank but for a stitch at the foot and two at the top, so that every place
// of an axis has to be followed through all rows; and with all symmetries.
void symmetry_of_none(benchmark::State& state) {
  const Grid grid = design(state).grid;
  for (auto _ : state) {
    benchmark::DoNotOptimize(classify(grid));
  }
}
BENCHMARK(symmetry_of_none)->Args({24, 240})->Args({200, 2000})->Unit(benchmark::kMicrosecond);

void symmetry_missed_at_the_last_row(benchmark::State& state) {
  Grid grid(static_cast<int>(state.range(0)), static_cast<int>(state.range(1)));
  grid.set(3, 0, true);
  grid.set(9, grid.height() - 1, true);
  grid.set(14, grid.height() - 1, true);
  for (auto _ : state) {
    benchmark::DoNotOptimize(classify(grid));
  }
}
BENCHMARK(symmetry_missed_at_the_last_row)->Args({24, 240})->Args({200, 2000})->Unit(benchmark::kMicrosecond);

void symmetry_of_all(benchmark::State& state) {
  const Grid grid = design(state).grid;
  std::vector<Cell> cells;
  for (int row = 0; row < grid.height(); ++row) {
    for (int column = 0; column < grid.width(); column += 7) {
      if (grid.at(column, row)) {
        cells.push_back({column, row});
      }
    }
  }
  Grid whole(grid.width(), grid.height());
  const Frieze frieze = centred_frieze(FriezeGroup::p2mm, grid.width(), grid.height());
  for (const Cell cell : complete_stroke(cells, frieze, grid.width(), grid.height()).cells) {
    whole.set(cell.column, cell.row, true);
  }
  for (auto _ : state) {
    benchmark::DoNotOptimize(classify(whole));
  }
}
BENCHMARK(symmetry_of_all)->Args({24, 240})->Args({200, 2000})->Unit(benchmark::kMicrosecond);

// The nearest drawing with all mirrors, over every place of the axes.
void make_it_so(benchmark::State& state) {
  const Grid grid = design(state).grid;
  for (auto _ : state) {
    benchmark::DoNotOptimize(nearest_with(grid, FriezeGroup::p2mm));
  }
}
BENCHMARK(make_it_so)->Args({24, 240})->Args({200, 2000})->Unit(benchmark::kMillisecond);

// With floats caught, accepted and stitches protected in every row that has a float too long.
void recheck_with_marks(benchmark::State& state) {
  Document document = design(state);
  const int width = document.grid.width();
  for (int row = 0; row < document.grid.height(); row += 3) {
    for (int column = 1; column <= 8; ++column) {
      document.grid.set(column, row, false);
    }
    set_mark(document.marks.caught, document.grid, 4, row, true);
    set_mark(document.marks.accepted, document.grid, width / 2, row, true);
    set_mark(document.marks.kept, document.grid, width - 2, row, true);
  }
  for (auto _ : state) {
    benchmark::DoNotOptimize(check(document, card_machine()));
  }
}
BENCHMARK(recheck_with_marks)->Args({24, 240})->Args({200, 2000})->Unit(benchmark::kMicrosecond);

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

// 200 needles, so many rows: the steps carried out, floats and all. Target: 2,000 rows within 10 ms.
void simulate(benchmark::State& state) {
  Document document = design(24, static_cast<int>(state.range(0)));
  document.piece.stitches = 200;
  const Profile& profile = *built_in_profile("standard-card-24");
  const RowsToKnit rows = rows_to_knit(document, profile);
  const StepList steps = steps_of(document, profile, rows);
  const auto card = std::make_shared<const PunchedCard>(planned_card(document, profile, rows));
  for (auto _ : state) {
    benchmark::DoNotOptimize(knit_steps(steps, document, profile, card));
  }
}
BENCHMARK(simulate)->Arg(500)->Arg(1000)->Arg(2000)->Unit(benchmark::kMillisecond);

void list_steps(benchmark::State& state) {
  const Document document = design(24, static_cast<int>(state.range(0)));
  const RowsToKnit rows = rows_to_knit(document, card_machine());
  for (auto _ : state) {
    benchmark::DoNotOptimize(steps_of(document, card_machine(), rows));
  }
}
BENCHMARK(list_steps)->Arg(60)->Arg(2000)->Unit(benchmark::kMicrosecond);

// A tier of 60 rows, the end needles forgotten before row 12 and everything marked. Target: 100 ms.
void what_went_wrong_in_60_rows(benchmark::State& state) {
  Document document = design(24, 60);
  document.piece.stitches = 98;
  const RowsToKnit rows = rows_to_knit(document, card_machine());
  const Setting setting = setting_of(document, card_machine(), rows);
  StepList forgotten = setting.steps;
  for (Step& step : forgotten.steps) {
    if (step.kind == StepKind::needles_back && step.first_row == 48) {
      step.actions.clear();
    }
  }
  const Fabric fabric = knit_steps(forgotten, document, card_machine(), setting.card).knitting.fabric;
  SeenFabric seen;
  for (int row = 0; row < 60; ++row) {
    std::vector<Mark> marks;
    for (Needle needle = first_needle_of(document); needle <= last_needle_of(document); ++needle.position) {
      const Made& cell = fabric.at(row + setting.steps.rows_before, needle);
      marks.push_back(cell.missing || cell.dropped ? Mark::dropped : cell.yarn == 'A' ? Mark::main : Mark::contrast);
    }
    seen.rows.push_back(std::move(marks));
  }
  for (auto _ : state) {
    benchmark::DoNotOptimize(what_went_wrong(setting, seen));
  }
}
BENCHMARK(what_went_wrong_in_60_rows)->Unit(benchmark::kMillisecond);

// A drawing with floats that are too long in about every second row.
Grid in_need_of_mending(const benchmark::State& state) {
  const auto width = static_cast<int>(state.range(0));
  const auto height = static_cast<int>(state.range(1));
  Grid grid(width, height);
  test::Dice dice(static_cast<std::uint64_t>(width * 10000 + height));
  for (int row = 0; row < height; ++row) {
    bool contrast = false;
    for (int column = 0; column < width; ++column) {
      contrast = dice.throw_one(3) == 0 ? !contrast : contrast;
      grid.set(column, row, contrast);
    }
  }
  return grid;
}

void mend_fewest(benchmark::State& state) {
  const Grid grid = in_need_of_mending(state);
  MendWishes wishes;
  wishes.look = false;
  for (auto _ : state) {
    benchmark::DoNotOptimize(mend(grid, wishes));
  }
}
BENCHMARK(mend_fewest)->Args({24, 60})->Args({200, 2000})->Unit(benchmark::kMicrosecond);

void mend_with_look(benchmark::State& state) {
  const Grid grid = in_need_of_mending(state);
  for (auto _ : state) {
    benchmark::DoNotOptimize(mend(grid, {}));
  }
}
BENCHMARK(mend_with_look)->Args({24, 60})->Args({200, 2000})->Unit(benchmark::kMicrosecond);

// Twelve megapixels, as a camera takes them.
Photo photograph() {
  constexpr int width = 4000;
  constexpr int height = 3000;
  std::vector<std::uint8_t> colours(std::size_t{width} * height * 3);
  for (std::size_t place = 0; place < colours.size(); ++place) {
    colours[place] = static_cast<std::uint8_t>(place / 7 ^ place / 12'011);
  }
  return photo_of(width, height, std::move(colours));
}

// One step while a control moves: the light of each stitch where its place has changed, and the drawing.
void trace_step(benchmark::State& state) {
  const Photo photo = photograph();
  const Lattice lattice = largest_lattice(photo.width, photo.height, 24, 60, Gauge{});
  const auto ignored = state.range(0) != 0 ? std::optional(IgnoredColour{{200, 30, 30}, 40}) : std::nullopt;
  for (auto _ : state) {
    benchmark::DoNotOptimize(trace(light_in(photo, lattice, ignored), 24, {}));
  }
}
BENCHMARK(trace_step)->ArgName("ignoring a colour")->Arg(0)->Arg(1)->Unit(benchmark::kMillisecond);

void trace_again_without_new_light(benchmark::State& state) {
  const Photo photo = photograph();
  const auto light = light_in(photo, largest_lattice(photo.width, photo.height, 24, 60, Gauge{}), {});
  for (auto _ : state) {
    benchmark::DoNotOptimize(trace(light, 24, {}));
  }
}
BENCHMARK(trace_again_without_new_light)->Unit(benchmark::kMicrosecond);

void best_place_on_a_photograph(benchmark::State& state) {
  const Photo photo = photograph();
  const Lattice lattice = largest_lattice(photo.width, photo.height, 24, 60, Gauge{});
  for (auto _ : state) {
    benchmark::DoNotOptimize(best_places(photo, lattice, Gauge{}, {}, {}, 3));
  }
}
BENCHMARK(best_place_on_a_photograph)->Unit(benchmark::kMillisecond);

// All sizes of the largest demo yoke: 4 sizes of 4 pieces in 3 tiers, as when a width is dragged.
void replan_yoke(benchmark::State& state) {
  const std::string path = PUNCHWRIGHT_SOURCE_DIR "/patterns/puffin-poncho.yoke";
  const auto read = [](const std::filesystem::path& file) { return read_file(file, std::size_t{1} << 20U); };
  const auto text = read(path);
  const auto opened = text ? open_yoke(*text, path, read) : Result<OpenedYoke>(text.error());
  if (!opened) {
    state.SkipWithError(opened.error().text().c_str());
    return;
  }
  for (auto _ : state) {
    const auto changed = with_changed_measures(*opened, opened->yoke);
    benchmark::DoNotOptimize(plan_sizes(*changed));
  }
}
BENCHMARK(replan_yoke)->Unit(benchmark::kMillisecond);

} // namespace

BENCHMARK_MAIN();
