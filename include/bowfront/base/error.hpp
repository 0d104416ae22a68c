#pragma once
/// \file
/// What can go wrong below the command line, one type for each kind of cause.

#include <cstddef>
#include <stdexcept>
#include <string>
#include <vector>

#include "bowfront/base/code.hpp"

namespace bowfront {

/// One fault in a file that the user wrote.
struct Diagnostic {
    Code code = Code::input_value;
    std::string file;        ///< as the user named it
    std::size_t line = 0;    ///< from 1; 0 where the fault has no place (a file that can't be read)
    std::size_t column = 0;  ///< from 1, in bytes
    std::string pointer;     ///< JSON pointer (RFC 6901) to the value
    std::string found;       ///< what was wrong, as a clause
    std::string wanted;      ///< what would be right, as a clause

    /// `file:line:column: BF-IN-003 /plan/width: found; wanted`
    [[nodiscard]] std::string text() const;
};

/// The user's file, option or value is wrong. Holds every fault that was found, in file order.
class InputError : public std::runtime_error {
  public:
    explicit InputError(std::vector<Diagnostic> diagnostics);
    [[nodiscard]] const std::vector<Diagnostic>& diagnostics() const noexcept {
        return diagnostics_;
    }

  private:
    std::vector<Diagnostic> diagnostics_;
};

/// The disk refused: a path and the reason.
class IoError : public std::runtime_error {
  public:
    /// @param code  output_refused for a place that is not ours to write to, else output_failed
    IoError(std::string path, std::string reason, Code code = Code::output_failed);
    [[nodiscard]] const std::string& path() const noexcept { return path_; }
    [[nodiscard]] const std::string& reason() const noexcept { return reason_; }

  private:
    std::string path_;
    std::string reason_;
};

/// The solid kernel failed, or what it made did not pass its proof.
class KernelError : public std::runtime_error {
  public:
    KernelError(std::string operation, std::string part, std::string detail);
    [[nodiscard]] const std::string& operation() const noexcept { return operation_; }
    [[nodiscard]] const std::string& part() const noexcept { return part_; }
    [[nodiscard]] const std::string& detail() const noexcept { return detail_; }

  private:
    std::string operation_;
    std::string part_;
    std::string detail_;
};

}  // namespace bowfront
