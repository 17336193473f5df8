// The place at the bench as text: the same again, whatever the design's path, and nothing strange from a damaged file.
#include "settings/bench_place.hpp"

#include <doctest/doctest.h>

using namespace punchwright;

TEST_CASE("a place is read as it was written") {
  const BenchPlace place{
      "/home/anna/hafen \"blau\"/möwe.repeat", "0123456789abcdef", 57, 33, {{"2026-11-25", 12}, {"2026-11-26", 21}}};
  const auto read = read_bench_place(write_bench_place(place), "place");
  REQUIRE(read.ok());
  CHECK(*read == place);
}

TEST_CASE("a path that is no UTF-8 is left out, and the rest is kept") {
  const BenchPlace place{"/home/\xff/a.repeat", "0123456789abcdef", 5, 2, {}};
  const auto read = read_bench_place(write_bench_place(place), "place");
  REQUIRE(read.ok());
  CHECK(read->done == 5);
  CHECK(read->design.empty());
}

TEST_CASE("what no place can be is an error with its line") {
  CHECK_FALSE(read_bench_place("done = -1\n", "place").ok());
  CHECK_FALSE(read_bench_place("done = \"many\"\n", "place").ok());
  CHECK_FALSE(read_bench_place("day = 3\n", "place").ok());
  const auto no_date = read_bench_place("rows = 2\n[[day]]\nrows = 1\n", "place");
  REQUIRE_FALSE(no_date.ok());
  CHECK(no_date.error().text() ==
        "place:2:1: 'day.date' is missing; allowed: a date in quotation marks: \"2026-11-26\"");
  CHECK_FALSE(read_bench_place("[[day]]\ndate = \"today\"\nrows = 1\n", "place").ok());
  CHECK_FALSE(read_bench_place("done = 5\nro", "place").ok()); // cut off
  CHECK(read_bench_place("done = -1\n", "place").error().line == 1);
}

TEST_CASE("rows are counted by the day, back and forth, and never fewer than none") {
  BenchPlace place;
  count_rows_on(place, "2026-11-26", 1);
  count_rows_on(place, "2026-11-26", 1);
  count_rows_on(place, "2026-11-27", 1);
  count_rows_on(place, "2026-11-26", -1);
  CHECK(rows_on(place, "2026-11-26") == 1);
  CHECK(rows_on(place, "2026-11-27") == 1);
  count_rows_on(place, "2026-11-27", -3); // yesterday's rows are undone: they were knitted all the same
  CHECK(rows_on(place, "2026-11-27") == 0);
  CHECK(rows_on(place, "2026-11-26") == 1);
  CHECK(rows_on(place, "2026-11-28") == 0);
}

TEST_CASE("the oldest days go when there are too many") {
  BenchPlace place;
  for (int year = 1000; year < 1000 + static_cast<int>(most_bench_days) + 5; ++year) {
    count_rows_on(place, std::to_string(year) + "-01-01", 1);
  }
  CHECK(place.days.size() == most_bench_days);
  CHECK(place.days.front().date == "1005-01-01");
}

TEST_CASE("a path with a line break or another control character is kept") {
  const BenchPlace place{"/home/the\nroom\b\x7f.repeat", "0123456789abcdef", 5, 2, {}};
  const auto read = read_bench_place(write_bench_place(place), "place");
  REQUIRE(read.ok());
  CHECK(*read == place);
}

TEST_CASE("each design has a file of its own; a design that was never saved is known by its steps") {
  CHECK(bench_file_name("/a/b.repeat", "1") == bench_file_name("/a/b.repeat", "2"));
  CHECK(bench_file_name("/a/b.repeat", "1") != bench_file_name("/a/c.repeat", "1"));
  CHECK(bench_file_name("", "1") != bench_file_name("", "2"));
}
