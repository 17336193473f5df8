// A value that lies elsewhere: for the large kind among the small ones of a variant, which would else all be as large.
// Copied and compared as the value is; never empty but after it was moved from.
#pragma once

#include <memory>
#include <utility>

namespace punchwright {

template <class T> class Boxed {
public:
  Boxed(T value) : value_(std::make_unique<T>(std::move(value))) {} // from a value as it is
  Boxed(const Boxed& other) : value_(other.value_ ? std::make_unique<T>(*other.value_) : nullptr) {}
  Boxed(Boxed&&) noexcept = default;
  Boxed& operator=(const Boxed& other) {
    *this = Boxed(other);
    return *this;
  }
  Boxed& operator=(Boxed&&) noexcept = default;
  ~Boxed() = default;

  [[nodiscard]] T& operator*() { return *value_; }
  [[nodiscard]] const T& operator*() const { return *value_; }
  [[nodiscard]] T* operator->() { return value_.get(); }
  [[nodiscard]] const T* operator->() const { return value_.get(); }

  bool operator==(const Boxed& other) const {
    return value_ == other.value_ || (value_ && other.value_ && *value_ == *other.value_);
  }

private:
  std::unique_ptr<T> value_;
};

} // namespace punchwright
