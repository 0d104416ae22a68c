#include "bowfront/pipeline/output_folder.hpp"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <cstring>
#include <fstream>
#include <set>
#include <sstream>
#include <system_error>

#include "bowfront/base/error.hpp"
#include "bowfront/report/report.hpp"
#include "write_all.hpp"

namespace bowfront {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const fs::path& path, const std::string& reason) {
    throw IoError(path.string(), reason);
}

[[noreturn]] void refuse(const fs::path& path, const std::string& reason) {
    throw IoError(path.string(), reason, Code::output_refused);
}

std::string reason_of(int number) { return std::strerror(number); }

// Where the folder really stands: a link to a folder means the folder behind it.
fs::path resolved(const std::string& place) {
    if (place.empty()) {
        fail(place, "name a folder");
    }
    std::error_code error;
    fs::path path = fs::absolute(place, error);
    if (!error) {
        path = fs::weakly_canonical(path, error);
    }
    if (error) {
        fail(place, error.message());
    }
    return path.has_filename() ? path : path.parent_path();
}

void refuse_unless_ours(const fs::path& path) {
    std::error_code error;
    const fs::file_status status = fs::symlink_status(path, error);
    if (status.type() == fs::file_type::not_found) {
        return;
    }
    if (error) {
        fail(path, error.message());
    }
    if (status.type() != fs::file_type::directory) {
        refuse(path, "is not a folder");
    }
    if (access(path.c_str(), W_OK | X_OK) != 0) {
        fail(path, reason_of(errno));
    }
    if (!fs::is_empty(path, error) && !is_our_output(path)) {
        refuse(path, "is not empty and holds no report.json of ours; name another folder");
    }
}

std::string read_back(const fs::path& path) {
    std::ifstream stream(path, std::ios::binary);
    std::ostringstream bytes;
    bytes << stream.rdbuf();
    return std::move(bytes).str();
}

}  // namespace

bool is_our_output(const fs::path& folder) {
    constexpr std::string_view kMark = "\"bowfront_report\"";
    constexpr std::size_t kHead = 256;  // the mark is the report's first key
    std::ifstream stream(folder / "report.json", std::ios::binary);
    std::array<char, kHead> head{};
    stream.read(head.data(), kHead);
    return std::string_view(head.data(), static_cast<std::size_t>(stream.gcount())).find(kMark) !=
           std::string_view::npos;
}

OutputFolder::OutputFolder(const std::string& place) : place_(resolved(place)) {
    refuse_unless_ours(place_);
    const fs::path parent = place_.parent_path();
    make_parents(parent);
    // Beside its place, so that moving it there stays within one file system.
    std::string pattern = (parent / ("." + place_.filename().string() + ".making-XXXXXX")).string();
    if (mkdtemp(pattern.data()) == nullptr) {
        const int number = errno;
        take_parents_away();
        fail(parent, reason_of(number));
    }
    staged_ = pattern;
    std::error_code error;
    // mkdtemp makes a private folder; the output shall be as readable as any folder of the user's.
    const mode_t mask = umask(0);
    umask(mask);
    fs::permissions(staged_, static_cast<fs::perms>(0777 & ~mask), error);
}

OutputFolder::~OutputFolder() {
    if (!staged_.empty()) {
        std::error_code ignored;
        fs::remove_all(staged_, ignored);
        take_parents_away();
    }
}

void OutputFolder::make_parents(const fs::path& parent) {
    std::error_code error;
    for (fs::path path = parent; !fs::exists(path, error); path = path.parent_path()) {
        parents_.push_back(path);
    }
    fs::create_directories(parent, error);
    if (error) {
        take_parents_away();
        fail(parent, error.message());
    }
}

void OutputFolder::take_parents_away() noexcept {
    for (const fs::path& path : parents_) {
        std::error_code ignored;
        fs::remove(path, ignored);  // only where it is empty
    }
}

void OutputFolder::write(const std::string& path, std::string_view bytes) {
    const fs::path file = staged_ / path;
    std::error_code error;
    fs::create_directories(file.parent_path(), error);
    if (error) {
        fail(place_ / path, error.message());
    }
    const int descriptor = open(file.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (descriptor < 0) {
        fail(place_ / path, reason_of(errno));
    }
    const bool written = write_all(descriptor, bytes);
    const int number = errno;
    if (close(descriptor) != 0 || !written) {
        fail(place_ / path, reason_of(written ? errno : number));
    }
    if (read_back(file) != bytes) {
        fail(place_ / path, "reads back as something else than was written");
    }
}

// What a maker keeps in the folder beside our files moves on with it: notes, photographs, the case
// file itself. Links to the same file, so that nothing is missing at any moment.
void OutputFolder::take_over_foreign_files() {
    const std::set<std::string> ours = report::listed_files(read_back(place_ / "report.json"));
    std::error_code error;
    for (fs::recursive_directory_iterator entry(place_, error), end; !error && entry != end;
         entry.increment(error)) {
        const fs::path path = entry->path().lexically_relative(place_);
        const fs::path target = staged_ / path;
        if (entry->is_directory(error) && !entry->is_symlink(error)) {
            continue;
        }
        if (ours.count(path.generic_string()) != 0 || path == "report.json" ||
            fs::exists(fs::symlink_status(target, error))) {
            continue;
        }
        fs::create_directories(target.parent_path(), error);
        fs::create_hard_link(entry->path(), target, error);
        if (error) {  // a file system without hard links
            error.clear();
            fs::copy(entry->path(), target, fs::copy_options::copy_symlinks, error);
        }
        if (error) {
            fail(place_ / path, "is not ours and could not be kept: " + error.message());
        }
    }
    if (error) {
        fail(place_, error.message());
    }
}

void OutputFolder::commit() {
    refuse_unless_ours(place_);  // it may have changed meanwhile
    std::error_code error;
    if (fs::exists(place_, error)) {
        take_over_foreign_files();
        // Both folders change places in one step, so that at every moment one of them is there.
        if (renameat2(AT_FDCWD, staged_.c_str(), AT_FDCWD, place_.c_str(), RENAME_EXCHANGE) != 0) {
            fail(place_, reason_of(errno));
        }
        fs::remove_all(staged_, error);
    } else if (rename(staged_.c_str(), place_.c_str()) != 0) {
        fail(place_, reason_of(errno));
    }
    staged_.clear();
}

}  // namespace bowfront
