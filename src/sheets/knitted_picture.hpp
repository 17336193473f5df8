// The fabric as a machine knitted it, with what went wrong drawn as it looks: for the proof, for 'what went wrong?',
// and for the window.
#pragma once

#include "knitting/fabric.hpp"
#include "sheets/exports.hpp"
#include "sheets/fabric_picture.hpp"

namespace punchwright {

// The piece's needles over all rows of the fabric, those of the setting-up lowest; sides and size as fabric_picture().
//
//     dropped          an open loop on a hole: nothing holds it
//     no stitch there  a ladder: the row's yarn passes the hole
//     slipped          the stitch below it drawn up over the row
//     cast on          an eyelet in the stitch
//
// On the purl side floats lie over the stitches that they pass, and rise to the needle where they were caught; a yarn
// that lies loose in a row goes from edge to edge.
[[nodiscard]] Result<FabricPicture> knitted_picture(const Fabric& fabric, const Document& document, Face side);

// The same as a file: .png, true to size at the gauge.
[[nodiscard]] Result<std::vector<OutputFile>> knitted_files(const Fabric& fabric, const Document& document,
                                                            const std::string& path, Face side);

} // namespace punchwright
