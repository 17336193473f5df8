// Words and data to the standard streams, with every write checked: a full device must not pass for success.
#pragma once

#include "design/result.hpp"
#include "machine/open_document.hpp"
#include "rules/findings.hpp"
#include "sheets/exports.hpp"

#include <string>
#include <string_view>
#include <vector>

namespace punchwright::cli {

// How much is said besides data and errors, for the whole call: `quiet` leaves out the names of files that were
// written, counts and hints; `wordy` tells on standard error what is read and written.
enum class Talk { quiet, usual, wordy };
void set_talk(Talk talk);
[[nodiscard]] Talk talk();

// "punchwright: …" on standard error; returns the exit code for what cannot be done.
int refuse(const Error& error);

// To standard output; on an error says so and returns false.
[[nodiscard]] bool print(std::string_view text);

// Gathers text and prints it in large pieces, since rows to knit can be two million.
class Printer {
public:
  void add(std::string_view text);
  // Prints the rest; false where any piece could not be written.
  [[nodiscard]] bool finish();

private:
  std::string waiting_;
  bool good_ = true;
};

// "-" is standard input.
[[nodiscard]] std::string name_for_people(const std::string& file);

// The bytes of a design's file, or of standard input ("-").
[[nodiscard]] Result<std::string> read_input(const std::string& file);
// The document of a file, or of standard input ("-"), with its machine. Refused, too, where it comes to more rows to
// knit than are worked out.
[[nodiscard]] Result<OpenedDocument> open_file(const std::string& file);
[[nodiscard]] Result<std::string> read_for_machine(const std::filesystem::path& path);

// Writes all of the files whole, or none and says why not, and prints their names. Returns done or cannot.
int write_all(const Result<std::vector<OutputFile>>& files);

// The same without their names, for commands that print something else.
int write_quietly(Result<std::vector<OutputFile>> files);

// done, or faults_found with a line on standard error that says how many.
int code_for_faults(const std::vector<Finding>& findings, const std::string& file);

} // namespace punchwright::cli
