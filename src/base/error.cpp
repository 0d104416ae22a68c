#include "bowfront/base/error.hpp"

#include <utility>

namespace bowfront {
namespace {

std::string joined(const std::vector<Diagnostic>& diagnostics) {
    std::string text;
    for (const Diagnostic& diagnostic : diagnostics) {
        if (!text.empty()) {
            text += '\n';
        }
        text += diagnostic.text();
    }
    return text;
}

}  // namespace

std::string Diagnostic::text() const {
    std::string text = file;
    if (line != 0) {
        text += ':' + std::to_string(line) + ':' + std::to_string(column);
    }
    if (!text.empty()) {
        text += ": ";
    }
    text += code_text(code);
    if (!pointer.empty()) {
        text += ' ' + pointer;
    }
    text += ": " + found;
    if (!wanted.empty()) {
        text += "; " + wanted;
    }
    return text;
}

InputError::InputError(std::vector<Diagnostic> diagnostics)
    : std::runtime_error(joined(diagnostics)), diagnostics_(std::move(diagnostics)) {}

IoError::IoError(std::string path, std::string reason, Code code)
    : std::runtime_error(std::string(code_text(code)) + " " + path + ": " + reason),
      path_(std::move(path)),
      reason_(std::move(reason)) {}

KernelError::KernelError(std::string operation, std::string part, std::string detail)
    : std::runtime_error("solid kernel: " + operation + " of " + part + ": " + detail),
      operation_(std::move(operation)),
      part_(std::move(part)),
      detail_(std::move(detail)) {}

}  // namespace bowfront
