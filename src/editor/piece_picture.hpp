// The cloth as pixels at the size at which it is shown: stitches in the yarns' colours and the gauge's proportion, the
// knit side, or the purl side with the floats as they lie. Flat mixtures when small, stitches with their loops when
// large, without a jump between. Only rows that changed are drawn anew, since this happens at every stroke.
#pragma once

#include "design/document.hpp"
#include "editor/colour_sight.hpp"
#include "editor/stitch_form.hpp"
#include "machine/profile.hpp"
#include "rows/rows.hpp"

#include <cstdint>
#include <utility>
#include <vector>

namespace punchwright::editor {

struct PiecePixels {
  int width = 0;
  int height = 0;
  int left = 0; // px from the room's upper left corner
  int top = 0;
  std::vector<unsigned char> rgb; // 3 bytes a pixel, the top row first
};

// What of the cloth is shown, and how large.
struct ClothView {
  Face face = Face::knit;
  bool afar = false; // the band repeated over 60 cm, whatever the piece's width; else the piece
  int width = 0;     // px of room
  int height = 0;
  double px_per_mm = 0; // 0: as large as fits
  double middle_x = 0;  // mm from the cloth's middle to the room's; x to the right, y upwards
  double middle_y = 0;
  ColourSight sight = ColourSight::as_is;
  bool operator==(const ClothView&) const = default;
};

// Width of the view from afar, mm.
inline constexpr double afar_mm = 600;

class ClothPainter {
public:
  // Brings the picture up to date with the design. True where a pixel may have changed. `rows_serial` is another number
  // for other rows: with the same one only drawn rows are compared, of which there are far fewer. 0: nothing is known.
  bool paint(const Document& design, const Profile& profile, const RowsToKnit& rows, const ClothView& view,
             std::uint64_t rows_serial = 0);
  [[nodiscard]] const PiecePixels& pixels() const { return pixels_; }
  // At which the last picture was painted; also where the view asked for what fits.
  [[nodiscard]] double px_per_mm() const { return px_per_mm_; }
  // px from the room's left edge of a place in the cloth, in stitches from its left edge; it may lie outside the room.
  [[nodiscard]] double x_of(double stitches) const { return left_px_ + stitches * stitch_px_; }

private:
  // Which stitches (or rows) lie under each pixel, and how much of it each covers: so a picture smaller than its
  // stitches shows their mixture, and has no stripes of its own.
  struct Lattice {
    struct Share {
      int cell = 0;
      float part = 1; // of the pixel
    };
    std::vector<Share> shares;
    std::vector<std::size_t> from;        // for each pixel its first share; one more at the end
    std::vector<int> middle;              // the cell in which the pixel's middle lies
    std::vector<float> part;              // and where in it, 0 to 1
    static constexpr int most_cells = 64; // looked at for a pixel
    static Lattice over(int pixels, double first_cell, double cells_per_pixel, int cells);
    void cover(double low, double high); // high at most the number of cells
    void sample(double low, double high);
    [[nodiscard]] int pixels() const { return static_cast<int>(middle.size()); }
  };
  struct Light {
    float red = 0;
    float green = 0;
    float blue = 0;
  };
  // The float that lies over a stitch, or its part between catches: on the purl side it is seen from one end to the
  // other.
  struct Over {
    int from = 0;        // the first stitch that it passes
    int length = 0;      // stitches; 0: no float there
    bool caught = false; // on that stitch, which is all of it then
  };
  // A row of the cloth as the side shown has it, from its left edge.
  struct Line {
    int row = -1;     // of the cloth, or the drawn one and 1; see line_of()
    char of_main = 0; // yarn keys, with which the drawn row was knitted
    char of_contrast = 0;
    std::vector<char> contrast; // of each stitch, 1: contrast; bytes, since they are looked at often
    std::vector<char> caught;   // 1: floats over that stitch are caught on its needle
    std::vector<Over> floats;   // over each stitch; none on the knit side, where they aren't seen
    std::vector<float> share;   // of each pixel across, the part that contrast covers
    Colour main;
    Colour contrast_colour;
  };
  // The light of each pixel across, colour by colour.
  struct LightAcross {
    std::vector<float> red;
    std::vector<float> green;
    std::vector<float> blue;
  };
  struct Frame { // what all rows depend on; another one paints everything anew
    ClothView view;
    int stitches = 0;
    int rows = 0;
    double px_per_mm = 0;
    std::uint64_t settings = 0;
    bool operator==(const Frame&) const = default;
  };

  [[nodiscard]] static Frame frame_for(const Document& design, const Profile& profile, int knitted,
                                       const ClothView& view);
  // Which rows have changed since the last picture: as the fingerprints, or by drawn row where the rows are the same.
  struct Changes {
    bool all = false;
    bool by_drawn_row = false;
    std::vector<bool> rows;
  };
  Changes changes_since(const Document& design, const RowsToKnit& rows, std::uint64_t rows_serial, bool all);
  [[nodiscard]] bool scan_due(int scan, const RowsToKnit& rows, const Changes& changes) const;
  static void lay_float(int from, int to, const std::vector<char>& caught, std::vector<Over>& floats);
  static void lay_floats(const Line& line, char yarn, std::vector<Over>& floats);
  static float sag_of(const Over& over, float place);
  void lay_out(const Frame& frame, double stitch_mm, double row_mm);
  const Line& line_of(const Document& design, const Profile& profile, const RowsToKnit& rows, int row);
  void fill_line(const Document& design, const Profile& profile, const RowToKnit& knitted, Line& line);
  void fill_stitches(const Document& design, const Profile& profile, const RowToKnit& knitted, Line& line) const;
  [[nodiscard]] Colour seen(Colour colour);
  [[nodiscard]] Light light_of(Colour colour) const;
  [[nodiscard]] float contrast_in(const Line& line, std::size_t pixel) const;
  void mix(const Line& line, float part);
  void paint_scan(const Document& design, const Profile& profile, const RowsToKnit& rows, int scan);
  void texture_scan(const Line& line, const Line& above, float height, unsigned char* out) const;

  PiecePixels pixels_;
  double px_per_mm_ = 0;
  double left_px_ = 0; // of the cloth's left edge
  double stitch_px_ = 1;
  Frame frame_;
  Lattice across_;
  Lattice upwards_;
  float detail_ = 0;                        // 0: mixtures only; 1: stitches only
  std::vector<std::uint64_t> fingerprints_; // of rows to knit that lines of pixels show
  std::vector<std::uint64_t> drawn_;        // of drawn rows, with the yarns' colours
  std::vector<bool> outdated_;              // drawn rows whose rows' fingerprints are older than the picture
  std::uint64_t rows_serial_ = 0;
  std::vector<Line> lines_;                             // the last few rows, or all drawn ones; see line_of()
  std::vector<std::pair<Colour, Colour>> seen_colours_; // and as they are seen, in this frame
  LightAcross sum_;                                     // of all rows under the line of pixels that is painted
  StitchForm form_;
  StitchInPixels seen_; // at the size of the last picture
  LightTable table_;
};

// The whole piece, as large as fits into `widest` × `tallest` px.
[[nodiscard]] PiecePixels picture_of_piece(const Document& design, const Profile& profile, const RowsToKnit& rows,
                                           Face face, int widest, int tallest);

} // namespace punchwright::editor
