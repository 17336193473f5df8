// The date is exchanged in the finished file: any date has the same length, so that no place in the file moves.
#include "sheets/pdf_date.hpp"

#include "words/words.hpp"

#include <charconv>
#include <chrono>
#include <fmt/format.h>
#include <string_view>
#include <system_error>

namespace punchwright {

namespace {

constexpr std::string_view before_date = "/CreationDate (";
constexpr std::string_view same_date = "20000101000000Z"; // as the PDF writer sets it
constexpr std::int64_t end_of_dates = 253402300800;       // 10000-01-01

} // namespace

Failure date_pdfs(std::vector<OutputFile>& files, const char* seconds) {
  const std::string_view wish = seconds == nullptr ? std::string_view{} : seconds;
  if (wish.empty()) {
    return std::nullopt;
  }
  std::int64_t since_1970 = 0;
  const auto [stop, trouble] = std::from_chars(wish.data(), wish.data() + wish.size(), since_1970);
  if (trouble != std::errc{} || stop != wish.data() + wish.size() || since_1970 < 0 || since_1970 >= end_of_dates) {
    return Error{{},
                 0,
                 0,
                 said("SOURCE_DATE_EPOCH is '{}'", wish),
                 tr("allowed: whole seconds since 1970-01-01, such as 1764158400; or unset it")};
  }
  const std::chrono::sys_seconds time{std::chrono::seconds{since_1970}};
  // Part by part: fmt's own formatting goes by way of nanoseconds, which hold no year after 2262.
  const auto midnight = std::chrono::floor<std::chrono::days>(time);
  const std::chrono::year_month_day day{midnight};
  const std::chrono::hh_mm_ss clock{time - midnight};
  const std::string date = fmt::format("{:04}{:02}{:02}{:02}{:02}{:02}Z", static_cast<int>(day.year()),
                                       static_cast<unsigned>(day.month()), static_cast<unsigned>(day.day()),
                                       clock.hours().count(), clock.minutes().count(), clock.seconds().count());
  for (OutputFile& file : files) {
    if (!file.bytes.starts_with("%PDF-")) {
      continue;
    }
    const std::size_t place = file.bytes.find(before_date);
    if (place != std::string::npos &&
        std::string_view(file.bytes).substr(place + before_date.size()).starts_with(same_date)) {
      file.bytes.replace(place + before_date.size(), date.size(), date);
    }
  }
  return std::nullopt;
}

} // namespace punchwright
