// The two works of a window, the design and the yoke beside it, as those see them that keep work for the user.
#pragma once

#include "files/file_stamp.hpp"
#include "journal/journal.hpp"

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace punchwright::editor {

struct App;
struct FoundWork;

enum class KeptSide { design, yoke };

[[nodiscard]] const std::filesystem::path& path_of(const App& app, KeptSide side); // empty: never saved
[[nodiscard]] std::uint64_t opening_of(const App& app, KeptSide side);             // grows with every opening
[[nodiscard]] std::uint64_t revision_of(const App& app, KeptSide side);            // grows with every change
[[nodiscard]] std::uint64_t digest_of_file(const App& app, KeptSide side);         // 0: none
[[nodiscard]] bool is_saved(const App& app, KeptSide side);
[[nodiscard]] std::string text_to_save(const App& app, KeptSide side); // as its file would be written now
[[nodiscard]] std::optional<FileStamp>& file_seen_of(App& app, KeptSide side);
// What was saved is no longer in its file: closing asks, and it is kept between two savings.
void forget_saved(App& app, KeptSide side);
[[nodiscard]] bool has_steps(const App& app, KeptSide side);

// As it is now, with the latest steps that are kept; not yet dated.
[[nodiscard]] Journal journal_of(const App& app, KeptSide side);

// The steps that were kept with the very same work; they are those of a saved one. Another work: nothing happens.
void take_steps(App& app, KeptSide side, Journal journal);

// What it was recovered from, where it was, until it is kept anew.
[[nodiscard]] std::shared_ptr<FoundWork>& recovered_of(App& app, KeptSide side);

} // namespace punchwright::editor
