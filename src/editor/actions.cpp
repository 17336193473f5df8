// Taking an action into the list, once for every kind of it.
#include "editor/actions.hpp"

#include <tuple>
#include <utility>

namespace punchwright::editor {

template <class OneAction> void Actions::push(OneAction action) {
  list.emplace_back(std::move(action));
}

void Actions::push(Action action) {
  list.push_back(std::move(action));
}

// Its explicit instantiation makes them.
template <class> struct PushOfEach;
template <class... Each> struct PushOfEach<std::variant<Each...>> {
  static constexpr std::tuple all{&Actions::push<Each>...};
};
template struct PushOfEach<Action>;

} // namespace punchwright::editor
