#pragma once
/// \file
/// Contracts: ranges that a caller promised. They are checked in every build.

#include <stdexcept>
#include <string>

namespace bowfront {

/// A caller broke a stated range. It means a fault of the program, never of the user's input.
class ContractError : public std::logic_error {
  public:
    using std::logic_error::logic_error;
};

/// Throws ContractError naming the broken condition and its place.
[[noreturn]] void contract_failed(const char* condition, const char* file, int line);

}  // namespace bowfront

/// Checks a promise of the caller; throws bowfront::ContractError when it is broken.
#define BOWFRONT_EXPECTS(condition) \
    ((condition) ? static_cast<void>(0) : ::bowfront::contract_failed(#condition, __FILE__, __LINE__))
