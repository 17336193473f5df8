// The commands of the command line, each a function from wishes to an exit code.
// They call the same core as the editor, and link none of its code.
#pragma once

#include "design/document.hpp"
#include "pictures/picture.hpp"
#include "pieces/starter.hpp"
#include "sheets/exports.hpp"
#include "sheets/yoke_sheets.hpp"
#include "tracing/trace.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

namespace punchwright::cli {

// What a caller can rely on: 0 done and no fault, 1 done and faults found, 2 cannot be done.
enum ExitCode { done = 0, faults_found = 1, cannot = 2 };

struct CheckWishes {
  std::vector<std::string> files;
  bool json = false;
};
struct RowsWishes {
  std::string file;
  bool json = false;
};
struct ExportWishes {
  std::string file;
  std::string output;
};
struct CardExportWishes {
  ExportWishes where;
  std::optional<int> only_card; // from 1
};
struct EverythingWishes {
  ExportWishes where; // the output is a folder
  ChartWishes chart;
  bool replace = false;
};
struct NeedlesWishes {
  ExportWishes where;
  ChartWishes chart;
};
struct FabricWishes {
  ExportWishes where;
  Face side = Face::knit;
};
struct ThumbnailWishes {
  std::string file;
  std::string output;
  int size = 256; // pixels of the longer side
};
struct LeafletWishes {
  ExportWishes where;
  std::optional<Paper> paper; // none: the design's
};
struct MachineWishes {
  std::string profile; // empty: list the built-in ones
  std::string output;  // empty: standard output
  std::optional<double> over_23_holes, over_50_rows, edge_to_first_hole, sheet_width, hole_diameter; // mm
  std::optional<int> swatch_looks_like; // 1 to 8, the numbers on the swatch's page
};
struct SheetWishes {
  std::string profile;
  std::string output;
  Paper paper = Paper::a4;
};

struct StepsWishes {
  std::string file;
  std::string output; // empty: standard output
  bool json = false;
};
struct ProveWishes {
  std::string file;
  std::string card;    // a punch list; empty: the card as the program draws it
  std::string picture; // .png of the fabric as knitted; empty: none
  Face side = Face::knit;
  bool json = false;
};

struct ImportWishes {
  std::string picture;
  std::string output;
  ContrastIs contrast = ContrastIs::darker;
  std::string machine = "bulky-card-24"; // built in, or a .machine file's path from here
};

struct MendingWishes {
  std::string file;
  std::string output;
  std::vector<std::string> protect; // "ROWS" or "ROWS:COLUMNS"
  std::vector<std::string> caught;  // the same, or "all": floats that are caught by hand
  std::vector<std::string> accepted;
  bool no_changes = false;     // of stitches
  bool symmetry = false;       // of the drawing is kept, as far as as few stitches do
  bool whole_symmetry = false; // the same, with more stitches where it must be
  bool json = false;
};

struct TraceCommandWishes {
  std::string picture;
  std::string output;
  int width = 24; // stitches
  int rows = 60;
  std::string machine = "bulky-card-24";     // as for importing
  std::optional<Gauge> gauge;                // absent: that of a new design
  std::optional<int> longest_float;          // stitches; absent: the machine's
  std::optional<std::array<double, 3>> part; // left, top and width in px; absent: the largest in the middle
  bool best_place = false;
  std::optional<IgnoredColour> ignored;
  TraceWishes how;
  std::vector<std::string> protect; // as for mending
  bool json = false;
};

struct ExplainWishes {
  std::string file;
  std::string seen; // the text picture
  Face side = Face::knit;
  std::string picture; // .png of the likeliest explanation's fabric; empty: none
  bool json = false;
};

struct YokeWishes {
  std::string file;
  std::string output; // the sheets, .pdf; with `fresh` or `split`: the .yoke file to write
  bool json = false;
  bool split = false;
  std::optional<YokeKind> fresh; // make a new one
  // Names: of the sizes on the sheets; with `fresh` those to make, without measures those of the table of bust sizes.
  std::vector<std::string> sizes;
  std::vector<std::string> pieces;  // names of those on the sheets
  std::vector<YokeSheet> sheets;    // which; empty: all
  std::optional<Paper> paper;       // none: that of the first tier's file
  std::vector<double> chest_cm;     // one for each size
  std::vector<double> upper_arm_cm; // one for each size, or none
  std::optional<double> ease_cm;
  std::vector<std::string> tiers; // .repeat files, from here
  std::string machine;            // built in, or a .machine file's path from here; empty: the tiers'
};

int check_files(const CheckWishes& wishes);
int list_rows(const RowsWishes& wishes);
int list_steps(const StepsWishes& wishes);
int explain_fabric(const ExplainWishes& wishes);
int import_picture(const ImportWishes& wishes);
int mend_file(const MendingWishes& wishes);
int trace_picture(const TraceCommandWishes& wishes);
int plan_yoke_file(const YokeWishes& wishes);
int prove_file(const ProveWishes& wishes); // of a .yoke file all pieces of all sizes
int prove_yoke(const ProveWishes& wishes);
int export_card(const CardExportWishes& wishes);
int export_everything(const EverythingWishes& wishes);
int export_needles(const NeedlesWishes& wishes);
int export_leaflet(const LeafletWishes& wishes);
int export_pattern(const ExportWishes& wishes);
int export_fabric(const FabricWishes& wishes);
int draw_thumbnail(const ThumbnailWishes& wishes);
int machine(const MachineWishes& wishes);
int measuring_sheet(const SheetWishes& wishes);
int orientation_swatch(const SheetWishes& wishes);

// Replaces this process by the editor, a program of its own beside this one or on the PATH. `language`: its code;
// empty: the user's settings decide.
int start_editor(const std::string& file, const std::string& language);

} // namespace punchwright::cli
