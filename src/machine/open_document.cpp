// Opens a .repeat file's text with its machine, and checks what only the two together can tell.
// The reader of files is the caller's.
#include "machine/open_document.hpp"

#include "machine/profile_file.hpp"
#include "words/words.hpp"

namespace punchwright {
namespace {

std::string allowed_profiles() {
  std::string names;
  for (const Profile& profile : built_in_profiles()) {
    names += names.empty() ? "" : ", ";
    names += profile.name;
  }
  return said("allowed: {}, or the path of a .machine file", names);
}

Error at(const std::string& path, Spot spot, std::string message, std::string remedy) {
  return Error{path, spot.line, spot.column, std::move(message), std::move(remedy)};
}

// Faults of the .machine file itself keep their own place; what has none is a fault of the key that names it.
Error placed(const Error& error, const std::string& path, Spot spot) {
  return error.line > 0
             ? error
             : at(path, spot, error.file.empty() ? error.message : error.file + ": " + error.message, error.remedy);
}

} // namespace

Result<Profile> find_profile(const std::string& name, const std::filesystem::path& beside, const FileReader& read) {
  if (const Profile* const built_in = built_in_profile(name)) {
    return *built_in;
  }
  const std::filesystem::path given(name);
  if (given.extension() != ".machine") {
    return Error{"", 0, 0, said("\"{}\" is no machine profile", name), allowed_profiles()};
  }
  const std::filesystem::path path = given.is_absolute() ? given : beside.parent_path() / given;
  const Result<std::string> text = read(path);
  if (!text) {
    return text.error();
  }
  return read_machine(*text, path.string());
}

Result<OpenedDocument> open_document(std::string_view text, const std::string& path, const FileReader& read) {
  Result<ReadDocument> found = read_repeat(text, path);
  if (!found) {
    return found.error();
  }
  const auto place = [&](const std::string& key) {
    const auto at_key = found->places.find(key);
    return at_key != found->places.end() ? at_key->second : KeyPlace{{1, 1}, {1, 1}};
  };
  const Result<Profile> profile = find_profile(found->document.profile, path, read);
  if (!profile) {
    return placed(profile.error(), path, place("machine.profile").value);
  }
  if (found->document.piece.first_column && profile->card) {
    return at(
        path, place("piece.first_column").key, said("'piece.first_column' on a machine with a card, {}", profile->name),
        tr("allowed: on machines without a card; here the card decides which column a needle knits, so leave it out"));
  }
  return OpenedDocument{std::move(found.value().document), *profile, std::move(found.value().notes)};
}

} // namespace punchwright
