// What follows from the design and is dear to work out: rows, findings, the picture of the piece. Kept until the
// design's revision changes, and made anew between two frames, never during one.
#pragma once

#include "design/document.hpp"
#include "design/result.hpp"
#include "drawing/alphabet.hpp"
#include "drawing/frieze.hpp"
#include "drawing/motifs.hpp"
#include "editor/canvas_layout.hpp"
#include "editor/finding_marks.hpp"
#include "editor/letter_floats.hpp"
#include "editor/piece_picture.hpp"
#include "editor/preview.hpp"
#include "editor/strips.hpp"
#include "editor/waiting.hpp"
#include "editor/yoke_cache.hpp"
#include "machine/profile.hpp"
#include "mending/mend.hpp"
#include "rows/rows.hpp"
#include "rows/rows_key.hpp"
#include "rules/check_rows.hpp"
#include "rules/findings.hpp"

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::editor {

struct App;

// An entry of the list: neighbouring rows of which the same is said stand there once, and so does a float that the
// piece shows as well.
struct Listed {
  FindingGroup group;
  int on_piece = -1; // the same float on the piece; -1: none
  [[nodiscard]] int finding() const { return static_cast<int>(group.first); }
  [[nodiscard]] bool gathers(int finding) const {
    return finding >= 0 && static_cast<std::size_t>(finding) >= group.first &&
           static_cast<std::size_t>(finding) < group.first + group.count;
  }
  [[nodiscard]] bool holds(int finding) const { return gathers(finding) || (finding >= 0 && finding == on_piece); }
};

// Stitches and their bands, where they aren't the document's.
struct OtherDrawing {
  Grid grid;
  std::vector<Band> bands;
};

// The picture of the cloth, and what the window made of it.
struct PiecePicture {
  ClothPainter painter;
  std::optional<ClothView> made_for;
  std::optional<OtherDrawing> other; // that it shows instead: with what is shown and not taken yet
  std::uint64_t serial = 0;          // grows with every new picture
  unsigned texture = 0;              // OpenGL's name for it, set by the window
  std::uint64_t uploaded = 0;        // serial of the picture that the texture holds
};

// The rows to knit of a drawing that isn't the document's yet, where they differ from the document's.
struct OtherRows {
  RowsToKnit rows;
  std::optional<RowsKey> rows_for;
  std::uint64_t serial = 0;
};

// A stitch of the knit side as textures, which the drawing's cells turn into when they are large: OpenGL's names, set
// by the window. `own` is how light the stitch's own yarn is, `foot` that of the stitch above where it comes out.
struct StitchTextures {
  unsigned own = 0;
  unsigned foot = 0;
};

// What the letters are drawn from.
struct LetteringWish {
  std::string words;
  LetterHeight height = LetterHeight::seven;
  Face worn = Face::knit;
  bool operator==(const LetteringWish&) const = default;
};

// The fewest stitches that would mend the row of the float that is looked at.
struct MendHint {
  int row = 0;
  Mended mended; // that row alone; nothing changed: it can't be mended
};

struct Caches {
  std::uint64_t opening = 0;
  std::uint64_t revision = 0;
  bool valid = false;
  RowsToKnit rows;
  std::optional<RowsKey> rows_for; // what they were derived from
  std::uint64_t rows_serial = 0;   // another one for every derivation, also of other drawings
  std::uint64_t last_rows_serial = 0;
  RowFindings row_findings;
  std::vector<Finding> findings;
  int faults = 0;
  int warnings = 0;
  int notes = 0;
  Strips strips;                  // of inserted rows between the drawn ones
  std::vector<Listed> listed;     // what the list of findings shows
  std::vector<Mark> marks;        // ascending by row
  std::vector<char> row_yarns;    // by drawn row: its band's main and contrast (0: none), two a row
  std::optional<Waiting> waiting; // the drawing with what is shown over it
  OtherRows other_rows;           // of the drawing that the piece shows instead
  PiecePicture piece;
  PreviewCache preview;
  YokeCache yoke;
  std::optional<MendHint> hint; // for the chosen finding, where it is a float
  int hint_for = -1;
  StitchTextures stitch;
  Frieze frieze;                              // the symmetry that the drawing has, during a stroke too
  std::optional<Result<Lettering>> lettering; // what is typed, as stitches; none: nothing is typed
  LetteringWish lettering_for;
  LetterFloats lettering_floats; // too long, that the letters would make at the cursor beyond those there are
  std::optional<WaitingKey> lettering_floats_for;
  std::vector<Motif> motifs;  // the user's own and the collection, once the tools are shown
  bool motifs_stale = true;   // they are read when the tools are shown the next time
  std::string motifs_trouble; // which of the user's files can't be read, and why
};

// The list's entry of a finding; none where it isn't listed by itself.
[[nodiscard]] const Listed* listed_for(const Caches& caches, int finding);

// Brings the caches up to date. Returns true where something was worked out.
bool refresh(App& app);

} // namespace punchwright::editor
