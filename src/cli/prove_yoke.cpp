// punchwright prove on a yoke: the machine's model knits every piece of every size, and the fabrics are laid side by
// side.
#include "cli/commands.hpp"
#include "cli/output.hpp"
#include "cli/yoke_answer.hpp"
#include "pieces/yoke_proof.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <nlohmann/json.hpp>

namespace punchwright::cli {
namespace {

using Json = nlohmann::ordered_json;

Json json_of(const SizeProof& proof, const std::string& size) {
  Json entry;
  entry["size"] = size;
  entry["proved"] = proof.proved();
  entry["pieces"] = Json::array();
  for (const ProvedPiece& piece : proof.pieces) {
    entry["pieces"].push_back({{"piece", piece.name},
                               {"tiers", piece.tiers},
                               {"rows", piece.rows},
                               {"stitches", piece.stitches},
                               {"trouble", piece.trouble.empty() ? Json(nullptr) : Json(piece.trouble)}});
  }
  entry["seams"] = Json::array();
  for (const ProvedSeam& seam : proof.seams) {
    entry["seams"].push_back({{"tier", seam.tier + 1},
                              {"between", {proof.pieces[seam.left].name, proof.pieces[seam.right].name}},
                              {"planned", seam.planned},
                              {"amiss", seam.amiss}});
  }
  return entry;
}

std::string text_of(const SizeProof& proof, const std::string& size) {
  long stitches = 0;
  for (const ProvedPiece& piece : proof.pieces) {
    stitches += piece.stitches;
  }
  const auto meant = std::ranges::count_if(proof.seams, &ProvedSeam::planned);
  const std::string seams = proof.centred ? said_count(static_cast<int>(meant), "{} seam that should be alike compared",
                                                       "{} seams that should be alike compared")
                                          : said_count(static_cast<int>(meant), "{} seam that should meet compared",
                                                       "{} seams that should meet compared");
  std::string text = said("size {}: {}, {} knitted; {}", size,
                          said_count(static_cast<int>(proof.pieces.size()), "{} piece", "{} pieces"),
                          said_count(stitches, "{} stitch", "{} stitches"), seams) +
                     '\n';
  for (const ProvedPiece& piece : proof.pieces) {
    if (!piece.trouble.empty()) {
      text += said("size {}, {}: {}", size, piece.name, piece.trouble) + '\n';
    }
  }
  for (const ProvedSeam& seam : proof.seams) {
    if (!seam.as_planned()) {
      text += said_count(seam.amiss, "size {1}, seam of tier {2} between {3} and {4}: {0} stitch differs",
                         "size {1}, seam of tier {2} between {3} and {4}: {0} stitches differ", size, seam.tier + 1,
                         proof.pieces[seam.left].name, proof.pieces[seam.right].name) +
              '\n';
    }
  }
  return text;
}

// Of the whole yoke; `proved` are the sizes that fit.
std::string verdict(bool proved, bool all_fit, bool centred) {
  if (!proved) {
    return tr("Not proved.");
  }
  if (centred) {
    return all_fit
               ? tr("Proved: by its steps every piece is knitted, nothing drops or is cast on, every piece shows the "
                    "middle of the repeat at its own, and seams are alike, where they should.")
               : tr("Not proved: not every size fits. In those that do, by its steps every piece is knitted, nothing "
                    "drops or is cast on, every piece shows the middle of the repeat at its own, and seams are "
                    "alike, where they should.");
  }
  return all_fit ? tr("Proved: by its steps every piece is knitted, nothing drops or is cast on, and every seam that "
                      "should meet does.")
                 : tr("Not proved: not every size fits. In those that do, by its steps every piece is knitted, nothing "
                      "drops or is cast on, and every seam that should meet does.");
}

Failure not_for_yokes(const ProveWishes& wishes) {
  if (wishes.card.empty() && wishes.picture.empty()) {
    return std::nullopt;
  }
  return Error{wishes.file, 0, 0, tr("a yoke is knitted from its own cards, and has no one picture"),
               tr("leave out --card and --picture, or name one of its tiers' .repeat files")};
}

} // namespace

int prove_yoke(const ProveWishes& wishes) {
  if (const Failure failure = not_for_yokes(wishes)) {
    return refuse(*failure);
  }
  const auto text = read_input(wishes.file);
  if (!text) {
    return refuse(text.error());
  }
  const auto opened = open_yoke(*text, name_for_people(wishes.file), read_for_machine);
  if (!opened) {
    return refuse(opened.error());
  }
  tell_notes(*opened);
  const SizesPlanned planned = plan_sizes(*opened);
  Json sizes = Json::array();
  std::string words;
  bool proved = true;
  const bool fits = tell_faults(planned, all_sizes(*opened)).size() == planned.faults.size();
  for (std::size_t size = 0; size < planned.faults.size(); ++size) {
    if (!planned.fits(size)) {
      words += said("size {} doesn't fit", opened->yoke.sizes[size]) + '\n';
      continue;
    }
    const SizeProof proof = prove_size(*opened, planned.plan.sizes[size]);
    proved = proved && proof.proved();
    sizes.push_back(json_of(proof, opened->yoke.sizes[size]));
    words += text_of(proof, opened->yoke.sizes[size]);
  }
  words += verdict(proved, fits, opened->yoke.fit.seams == YokeSeams::centred);
  const std::string answer =
      wishes.json ? Json{{"format", 1}, {"proved", proved && fits}, {"sizes", sizes}}.dump() : words;
  if (sizes.empty() || !print(answer + "\n") || !fits) {
    return cannot;
  }
  return proved ? done : faults_found;
}

} // namespace punchwright::cli
