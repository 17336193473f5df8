// Each sheet in the form that is of most use, or in a smaller one where the design is too large for that.
#include "sheets/everything.hpp"

#include "sheets/reports.hpp"
#include "words/words.hpp"

#include <filesystem>
#include <functional>
#include <iterator>
#include <utility>

namespace punchwright {
namespace {

// A table of more rows than that is some 50 MB, and nobody reads it.
constexpr std::size_t most_rows_in_table = 500'000;

using Maker = std::function<Result<std::vector<OutputFile>>(const std::string& path)>;

class Collection {
public:
  explicit Collection(const std::string& name) : name_(name) {}

  // The first form that can be made; else the reason against the first.
  void add(const std::string& sheet, const std::vector<std::string>& forms, const Maker& make) {
    const std::string what = std::to_string(++number_) + "-" + sheet;
    std::optional<Error> reason;
    for (const std::string& form : forms) {
      auto files = make(name_ + "-" + what + form);
      if (files) {
        std::ranges::move(*files, std::back_inserter(all_.files));
        return;
      }
      reason = reason ? reason : files.error();
    }
    if (reason) {
      reason->file = std::filesystem::path(name_ + "-" + what + forms.front()).filename().string();
      all_.left_out.push_back(*reason);
    }
  }

  [[nodiscard]] Everything take() { return std::move(all_); }

private:
  std::string name_;
  int number_ = 0;
  Everything all_;
};

std::vector<OutputFile> one(const std::string& path, std::string text) {
  std::vector<OutputFile> files;
  files.push_back({path, std::move(text)});
  return files;
}

} // namespace

Everything everything_of(const Document& document, const Profile& profile, const std::vector<Finding>& findings,
                         const std::string& name, const ChartWishes& wishes) {
  Collection all(name);
  if (profile.card) {
    all.add("card", {".pdf", ".txt"}, [&](const auto& path) { return card_files(document, profile, path); });
  }
  all.add("needles", {".pdf", ".txt"}, [&](const auto& path) { return needle_files(document, profile, path, wishes); });
  all.add("steps", {".pdf", ".txt"}, [&](const auto& path) { return step_files(document, profile, path); });
  all.add("knit-side", {".png"}, [&](const auto& path) { return fabric_files(document, profile, path, Face::knit); });
  all.add("purl-side", {".png"}, [&](const auto& path) { return fabric_files(document, profile, path, Face::purl); });
  all.add("rows", {".txt"}, [&](const auto& path) -> Result<std::vector<OutputFile>> {
    const RowsToKnit rows = rows_to_knit(document, profile);
    if (rows.rows.size() > most_rows_in_table) {
      return Error{{},
                   0,
                   0,
                   said("{} rows are too many for the table of rows", rows.rows.size()),
                   said("up to {} are allowed; knit fewer times", most_rows_in_table)};
    }
    std::string text;
    rows_table(document, profile, rows, [&](std::string_view piece) { text += piece; });
    return one(path, std::move(text));
  });
  all.add("check", {".txt"}, [&](const auto& path) {
    std::string text;
    check_report(findings, document, profile, std::filesystem::path(name).filename().string(),
                 [&](std::string_view piece) { text += piece; });
    return Result<std::vector<OutputFile>>(one(path, std::move(text)));
  });
  all.add("leaflet", {".pdf"},
          [&](const auto& path) { return leaflet_files(document, profile, path, document.card.paper); });
  all.add("pattern-chart", {".png"}, [&](const auto& path) { return pattern_files(document, path); });
  return all.take();
}

std::vector<std::string> present_among(const std::vector<OutputFile>& files) {
  std::vector<std::string> present;
  std::error_code ignored;
  for (const OutputFile& file : files) {
    if (std::filesystem::exists(file.path, ignored)) {
      present.push_back(std::filesystem::path(file.path).filename().string());
    }
  }
  return present;
}

} // namespace punchwright
