// The screen saver interface and the portal's, through libdbus. A desktop that doesn't answer in time is left alone.
#include "editor/screen_awake.hpp"

#include "words/words.hpp"

#include <chrono>
#include <condition_variable>
#include <cstdint>
#include <cstdlib>
#include <dbus/dbus.h>
#include <filesystem>
#include <functional>
#include <mutex>
#include <optional>
#include <string>
#include <thread>

namespace punchwright::editor {
namespace {

constexpr int longest_answer_ms = 2000;
constexpr std::chrono::milliseconds longest_farewell{200};
constexpr const char* program = "Punchwright";
constexpr const char* reason = noted("The steps at the knitting machine are shown");

struct Unref {
  void operator()(DBusMessage* message) const { dbus_message_unref(message); }
  void operator()(DBusConnection* connection) const {
    dbus_connection_close(connection);
    dbus_connection_unref(connection);
  }
};
using Message = std::unique_ptr<DBusMessage, Unref>;
using Connection = std::unique_ptr<DBusConnection, Unref>;

// Only a bus that runs already: libdbus by itself would start one.
std::string bus_address() {
  if (const char* const told = std::getenv("DBUS_SESSION_BUS_ADDRESS"); told != nullptr && *told != 0) {
    return told;
  }
  const char* const folder = std::getenv("XDG_RUNTIME_DIR");
  if (folder == nullptr || *folder != '/') {
    return {};
  }
  const std::filesystem::path socket = std::filesystem::path(folder) / "bus";
  std::error_code ignored;
  return std::filesystem::is_socket(socket, ignored) ? "unix:path=" + socket.string() : std::string();
}

Connection connect() {
  const std::string address = bus_address();
  if (address.empty()) {
    return nullptr;
  }
  Connection connection(dbus_connection_open_private(address.c_str(), nullptr));
  if (connection == nullptr) {
    return nullptr;
  }
  dbus_connection_set_exit_on_disconnect(connection.get(), FALSE);
  return dbus_bus_register(connection.get(), nullptr) == TRUE ? std::move(connection) : nullptr;
}

Message answer_to(DBusConnection& connection, const Message& question) {
  DBusError trouble = DBUS_ERROR_INIT;
  Message answer(dbus_connection_send_with_reply_and_block(&connection, question.get(), longest_answer_ms, &trouble));
  dbus_error_free(&trouble);
  return answer;
}

// The interface of screen savers: freedesktop.org's idle inhibition, as Inhibit and UnInhibit with a cookie.
constexpr const char* saver = "org.freedesktop.ScreenSaver";
constexpr const char* saver_path = "/org/freedesktop/ScreenSaver";

std::optional<dbus_uint32_t> inhibit_saver(DBusConnection& connection) {
  const Message question(dbus_message_new_method_call(saver, saver_path, saver, "Inhibit"));
  const char* const words = tr(reason);
  if (question == nullptr || dbus_message_append_args(question.get(), DBUS_TYPE_STRING, &program, DBUS_TYPE_STRING,
                                                      &words, DBUS_TYPE_INVALID) == FALSE) {
    return std::nullopt;
  }
  const Message answer = answer_to(connection, question);
  dbus_uint32_t cookie = 0;
  if (answer == nullptr ||
      dbus_message_get_args(answer.get(), nullptr, DBUS_TYPE_UINT32, &cookie, DBUS_TYPE_INVALID) == FALSE) {
    return std::nullopt;
  }
  return cookie;
}

void release_saver(DBusConnection& connection, dbus_uint32_t cookie) {
  const Message question(dbus_message_new_method_call(saver, saver_path, saver, "UnInhibit"));
  if (question != nullptr &&
      dbus_message_append_args(question.get(), DBUS_TYPE_UINT32, &cookie, DBUS_TYPE_INVALID) == TRUE) {
    (void)answer_to(connection, question);
  }
}

// The portal's: it ends with the request, or when the program leaves the bus.
constexpr dbus_uint32_t portal_idle = 8; // of its flags: the session isn't marked as idle

bool append_reason(DBusMessage& question) {
  DBusMessageIter all;
  DBusMessageIter options;
  DBusMessageIter entry;
  DBusMessageIter value;
  const char* const key = "reason";
  const char* const window = "";
  const char* const words = tr(reason);
  dbus_message_iter_init_append(&question, &all);
  return dbus_message_iter_append_basic(&all, DBUS_TYPE_STRING, &window) == TRUE &&
         dbus_message_iter_append_basic(&all, DBUS_TYPE_UINT32, &portal_idle) == TRUE &&
         dbus_message_iter_open_container(&all, DBUS_TYPE_ARRAY, "{sv}", &options) == TRUE &&
         dbus_message_iter_open_container(&options, DBUS_TYPE_DICT_ENTRY, nullptr, &entry) == TRUE &&
         dbus_message_iter_append_basic(&entry, DBUS_TYPE_STRING, &key) == TRUE &&
         dbus_message_iter_open_container(&entry, DBUS_TYPE_VARIANT, "s", &value) == TRUE &&
         dbus_message_iter_append_basic(&value, DBUS_TYPE_STRING, &words) == TRUE &&
         dbus_message_iter_close_container(&entry, &value) == TRUE &&
         dbus_message_iter_close_container(&options, &entry) == TRUE &&
         dbus_message_iter_close_container(&all, &options) == TRUE;
}

void inhibit_by_portal(DBusConnection& connection) {
  const Message question(dbus_message_new_method_call("org.freedesktop.portal.Desktop",
                                                      "/org/freedesktop/portal/desktop",
                                                      "org.freedesktop.portal.Inhibit", "Inhibit"));
  if (question != nullptr && append_reason(*question)) {
    (void)answer_to(connection, question);
  }
}

} // namespace

// One inhibition, from its beginning to its end. The thread owns it together with the window, which never waits for a
// desktop that doesn't answer: a bus may take half a minute to say so.
struct ScreenAwake::Talk {
  std::mutex mutex;
  std::condition_variable changed;
  bool over = false;     // the screen may sleep again
  bool finished = false; // the desktop knows, or never answered
};

namespace {

void talk_to_desktop(const std::function<void()>& wait_until_over) {
  const Connection connection = connect();
  if (connection == nullptr) {
    return;
  }
  const auto cookie = inhibit_saver(*connection);
  if (!cookie) {
    inhibit_by_portal(*connection);
  }
  wait_until_over();
  if (cookie) {
    release_saver(*connection, *cookie);
  }
}

} // namespace

ScreenAwake::ScreenAwake() = default;

ScreenAwake::~ScreenAwake() {
  keep(false);
  if (talk_ != nullptr) { // a desktop that answers hears of it; any other sees the program leave the bus
    std::unique_lock lock(talk_->mutex);
    talk_->changed.wait_for(lock, longest_farewell, [this] { return talk_->finished; });
  }
}

void ScreenAwake::keep(bool awake) {
  if (awake == awake_) {
    return;
  }
  awake_ = awake;
  if (!awake) {
    const std::lock_guard lock(talk_->mutex);
    talk_->over = true;
    talk_->changed.notify_all();
    return;
  }
  talk_ = std::make_shared<Talk>();
  std::thread([talk = talk_] {
    talk_to_desktop([&talk] {
      std::unique_lock lock(talk->mutex);
      talk->changed.wait(lock, [&talk] { return talk->over; });
    });
    const std::lock_guard lock(talk->mutex);
    talk->finished = true;
    talk->changed.notify_all();
  }).detach();
}

} // namespace punchwright::editor
