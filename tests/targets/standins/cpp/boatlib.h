// An invented library: a boat that knows what is fitted to it.
#pragma once

#include <memory>
#include <optional>
#include <set>
#include <stdexcept>
#include <string>
#include <utility>

namespace boatlib {

// Anything fitted to the boat.
struct Part {};

// A motor.
struct Drive : Part {};

// A servo.
struct Hinge : Part {};

// There is no such device.
struct NotFitted : std::runtime_error {
  using std::runtime_error::runtime_error;
};

class Boat {
 public:
  explicit Boat(std::set<std::string> names) : names_(std::move(names)) {}

  int asked() const { return asked_; }

  Drive& motor(const std::string& name) { return fitted<Drive>(name); }

  // Returns a device, or throws NotFitted.
  template <class T>
  T& fitted(const std::string& name) {
    T* found = find<T>(name);
    if (!found) throw NotFitted(name);
    return *found;
  }

  // Returns a device, or a null pointer.
  template <class T>
  T* find(const std::string& name) {
    static T device;
    ++asked_;
    return names_.count(name) > 0 ? &device : nullptr;
  }

  // Returns a device, or an empty optional.
  template <class T>
  std::optional<T> perhaps(const std::string& name) {
    return find<T>(name) ? std::optional<T>(T()) : std::nullopt;
  }

  // Returns a device that nobody else owns, or nothing.
  template <class T>
  std::unique_ptr<T> lent(const std::string& name) {
    return find<T>(name) ? std::make_unique<T>() : nullptr;
  }

 private:
  std::set<std::string> names_;
  int asked_ = 0;
};

}  // namespace boatlib
