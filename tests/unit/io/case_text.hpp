#pragma once
/// \file
/// The reference case as text, whole and with changes.

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <string>
#include <string_view>
#include <vector>

#include "bowfront/base/error.hpp"
#include "bowfront/io/read_case.hpp"

namespace bowfront::io {

/// The text of a file of this project.
inline std::string project_file(const std::string& path) {
    std::ifstream stream(std::string(BOWFRONT_SOURCE_DIR) + '/' + path, std::ios::binary);
    EXPECT_TRUE(stream) << path;
    return {std::istreambuf_iterator<char>(stream), {}};
}

/// `examples/pilot-boat/case.json`.
inline std::string pilot_boat() {
    return project_file("examples/pilot-boat/case.json");
}

/// A text with its first occurrence of some words replaced by others.
inline std::string with(std::string text, std::string_view words, std::string_view others) {
    const std::size_t at = text.find(words);
    EXPECT_NE(at, std::string::npos) << "the text has no " << words;
    return at == std::string::npos ? text : text.replace(at, words.size(), others);
}

/// The pilot boat's case with a change.
inline std::string pilot_boat_with(std::string_view words, std::string_view others) {
    return with(pilot_boat(), words, others);
}

/// The faults of a text; none where it is read.
inline std::vector<Diagnostic> faults_of(std::string_view text) {
    try {
        (void)read_case(text, "case.json");
    } catch (const InputError& error) {
        return error.diagnostics();
    }
    return {};
}

/// The same, each as it is printed, joined by line breaks.
inline std::string fault_text(std::string_view text) {
    std::string out;
    for (const Diagnostic& fault : faults_of(text)) {
        out += (out.empty() ? "" : "\n") + fault.text();
    }
    return out;
}

/// What was assumed at a pointer; an entry with empty texts where nothing was.
inline Assumption assumed_at(const ReadCase& read, std::string_view pointer) {
    for (const Assumption& entry : read.assumed) {
        if (entry.pointer == pointer) {
            return entry;
        }
    }
    return {};
}

}  // namespace bowfront::io
