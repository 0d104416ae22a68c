#include "faults.hpp"

#include <algorithm>
#include <tuple>
#include <utility>

#include "bowfront/io/read_case.hpp"

namespace bowfront::io {
namespace {

// Whether `inner` is the pointer `outer` or leads further down from it.
bool within(std::string_view inner, std::string_view outer) noexcept {
    return inner.starts_with(outer) && (inner.size() == outer.size() || inner[outer.size()] == '/');
}

}  // namespace

Faults::Faults(std::string file) : file_(std::move(file)) {}

void Faults::add(Code code, Place place, std::string pointer, std::string found,
                 std::string wanted) {
    if (full()) {
        ++more_;
        return;
    }
    all_.push_back({code, file_, place.line, place.column, std::move(pointer), std::move(found),
                    std::move(wanted)});
}

bool Faults::full() const noexcept {
    return all_.size() == kMostFaults;
}

bool Faults::touch(std::string_view pointer) const noexcept {
    return std::any_of(all_.begin(), all_.end(), [pointer](const Diagnostic& fault) {
        return within(pointer, fault.pointer) || within(fault.pointer, pointer);
    });
}

std::vector<Diagnostic> Faults::in_file_order() const {
    std::vector<Diagnostic> sorted = all_;
    std::stable_sort(sorted.begin(), sorted.end(), [](const Diagnostic& a, const Diagnostic& b) {
        return std::tie(a.line, a.column) < std::tie(b.line, b.column);
    });
    if (more_ != 0) {
        sorted.push_back({Code::input_limit,
                          file_,
                          0,
                          0,
                          {},
                          std::to_string(more_) + " more faults are not listed",
                          "mend those above first"});
    }
    return sorted;
}

}  // namespace bowfront::io
