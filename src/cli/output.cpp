// Standard streams and files, checked.
#include "cli/output.hpp"

#include "cli/commands.hpp"
#include "files/files.hpp"
#include "sheets/pdf_date.hpp"
#include "words/words.hpp"

#include <algorithm>
#include <cstdio>
#include <cstdlib>
#include <fmt/format.h>

namespace punchwright::cli {
namespace {

Talk talk_of_this_call = Talk::usual; // as asked for on the command line, before anything is done

void tell(const std::string& words) {
  if (talk() == Talk::wordy) {
    fmt::print(stderr, "punchwright: {}\n", words);
  }
}

void tell_read(const std::string& file, std::size_t bytes) {
  tell(said("read {} ({} bytes)", file, bytes));
}

constexpr std::size_t largest_input = std::size_t{8} * 1024 * 1024; // bytes: a 200 × 2,000 drawing takes 0.4 MB

} // namespace

void set_talk(Talk talk) {
  talk_of_this_call = talk;
}

Talk talk() {
  return talk_of_this_call;
}

int refuse(const Error& error) {
  const std::string text = fmt::format("punchwright: {}\n", error.text());
  std::fwrite(text.data(), 1, text.size(), stderr);
  return cannot;
}

bool print(std::string_view text) {
  if (const auto failure = write_file("-", text)) {
    refuse(*failure);
    return false;
  }
  return true;
}

void Printer::add(std::string_view text) {
  constexpr std::size_t large_piece = 1 << 20;
  waiting_ += text;
  if (waiting_.size() >= large_piece && good_) {
    good_ = print(waiting_);
    waiting_.clear();
  }
}

bool Printer::finish() {
  if (good_ && !waiting_.empty()) {
    good_ = print(waiting_);
  }
  waiting_.clear();
  return good_;
}

Result<std::string> read_for_machine(const std::filesystem::path& path) {
  auto text = read_file(path, largest_input);
  if (text) {
    tell_read(path.string(), text->size());
  }
  return text;
}

std::string name_for_people(const std::string& file) {
  return file == "-" ? tr("standard input") : file;
}

Result<std::string> read_input(const std::string& file) {
  auto text = read_file(file, largest_input);
  if (text) {
    tell_read(name_for_people(file), text->size());
  }
  return text;
}

Result<OpenedDocument> open_file(const std::string& file) {
  const auto text = read_input(file);
  if (!text) {
    return text.error();
  }
  const std::string name = name_for_people(file);
  auto opened = open_document(*text, name, read_for_machine);
  if (opened) {
    if (auto failure = too_many_rows(opened->document, opened->profile)) {
      failure->file = name;
      return *failure;
    }
  }
  return opened;
}

int write_quietly(Result<std::vector<OutputFile>> files) {
  if (!files) {
    return refuse(files.error());
  }
  if (const auto failure = date_pdfs(*files, std::getenv("SOURCE_DATE_EPOCH"))) {
    return refuse(*failure);
  }
  std::vector<NewContent> contents;
  for (const OutputFile& file : *files) {
    contents.push_back({file.path, file.bytes});
  }
  if (const auto failure = write_files(contents)) {
    return refuse(*failure);
  }
  for (const OutputFile& file : *files) {
    tell(said("wrote {} ({} bytes)", file.path == "-" ? tr("standard output") : file.path, file.bytes.size()));
  }
  return done;
}

int write_all(const Result<std::vector<OutputFile>>& files) {
  if (const int written = write_quietly(files); written != done) {
    return written;
  }
  std::string names;
  for (const OutputFile& file : *files) {
    names += file.path + '\n';
  }
  const bool to_standard_output = files->size() == 1 && files->front().path == "-";
  return to_standard_output || talk() == Talk::quiet || print(names) ? done : cannot;
}

int code_for_faults(const std::vector<Finding>& findings, const std::string& file) {
  const auto faults = std::ranges::count(findings, Severity::fault, &Finding::severity);
  if (faults == 0) {
    return done;
  }
  if (talk() != Talk::quiet) {
    fmt::print(stderr, "punchwright: {}\n",
               said_count(faults, "{1}: {0} fault; 'punchwright check' names it",
                          "{1}: {0} faults; 'punchwright check' names them", name_for_people(file)));
  }
  return faults_found;
}

} // namespace punchwright::cli
