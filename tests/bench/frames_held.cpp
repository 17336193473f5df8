// What the editor's frames cost while a fill is held over a large drawing under all mirrors, and the pointer goes on a
// stitch in each: everything of a frame but OpenGL. Published in docs/performance.md.
#include "drawing/frieze.hpp"
#include "editor/panels.hpp"
#include "load/frames.hpp"

#include <benchmark/benchmark.h>

namespace {

using namespace punchwright;
using namespace punchwright::editor;

// Main that hangs together all over, with a contrast stitch here and there.
Document dotted() {
  Document design = blank_document(200, 2000);
  for (int row = 0; row < design.grid.height(); row += 2) {
    for (int column = row / 2 % 2 * 2; column < design.grid.width(); column += 4) {
      design.grid.set(column, row, true);
    }
  }
  design.piece.stitches = 100;
  return design;
}

// The pointer's way: stitches of one patch; onto a contrast stitch and off it by turns, where nothing is to be filled,
// and everything again; the same with the drawing as a whole in sight.
enum Way : std::int64_t { within, in_and_out, in_and_out_of_all };

void held_fill(benchmark::State& state) {
  App app = make_app();
  app.work.design = dotted();
  ++app.work.opening;
  app.view.symmetry = centred_frieze(FriezeGroup::p2mm, 200, 2000);
  app.view.tab = Tab::tools;
  apply(app, Run{Command::tool_flood});
  test::Frames frames(app);
  if (state.range(0) == in_and_out_of_all) {
    apply(app, Run{Command::zoom_fit});
    frames.build_all();
  }
  const ScreenBox& canvas = app.view.canvas;
  const CanvasLayout layout = layout_of(app, canvas);
  const Cell middle = cell_at(layout, canvas.middle());
  const Cell dot{middle.column / 4 * 4 + (middle.row / 2 % 2) * 2, middle.row / 2 * 2};
  const auto point_at = [&](Cell cell) { frames.queue.push(PointerEvent{box_of(layout, cell).middle()}); };
  point_at({dot.column + 1, dot.row + 1});
  frames.build_all();
  frames.queue.push(ButtonEvent{0, true});
  frames.build_all();
  int step = 0;
  for (auto _ : state) {
    ++step;
    const bool out = state.range(0) != within && step % 2 == 1;
    point_at(out ? dot : Cell{dot.column + 1 + step % 4 / 2 * 2, dot.row + 1});
    frames.build();
  }
  if (!app.session.stroke || app.session.stroke->tool != Tool::flood) {
    state.SkipWithError("the fill isn't held");
  }
}
BENCHMARK(held_fill)->ArgName("way")->DenseRange(within, in_and_out_of_all)->Unit(benchmark::kMillisecond);

} // namespace

BENCHMARK_MAIN();
