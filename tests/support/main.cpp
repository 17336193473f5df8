// The main function of every test executable: shuffled, with the seed printed so that an order can be had again
// (--rand-seed=N --order-by=rand).
#define DOCTEST_CONFIG_IMPLEMENT
#include <chrono>
#include <doctest/doctest.h>
#include <iostream>
#include <string_view>

int main(int count, char** arguments) {
  const auto now = std::chrono::system_clock::now().time_since_epoch().count();
  const auto seed = static_cast<unsigned>(now % 1'000'000);
  doctest::Context context;
  context.setOption("order-by", "rand");
  context.setOption("rand-seed", static_cast<int>(seed));
  context.applyCommandLine(count, arguments);
  bool chosen = false;
  for (int index = 1; index < count; ++index) {
    chosen = chosen || std::string_view(arguments[index]).find("rand-seed") != std::string_view::npos;
  }
  if (!chosen) {
    std::cout << "order: --order-by=rand --rand-seed=" << seed << '\n';
  }
  return context.run();
}
