// The editor's main function.
#include "editor/run.hpp"

int main(int count, char** arguments) {
  const auto options = punchwright::editor::read_options(count, arguments);
  if (const int* const status = std::get_if<int>(&options)) {
    return *status;
  }
  return punchwright::editor::run(std::get<punchwright::editor::Options>(options));
}
