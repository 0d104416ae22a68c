#include <cerrno>
#include <cstdio>
#include <cstring>
#include <memory>

#include "bowfront/base/error.hpp"
#include "bowfront/pipeline/design.hpp"

namespace bowfront {
namespace {

[[noreturn]] void refuse(const std::string& path, Code code, std::string found,
                         std::string wanted) {
    throw InputError({{code, path, 0, 0, {}, std::move(found), std::move(wanted)}});
}

struct Close {
    void operator()(std::FILE* file) const { std::fclose(file); }
};

}  // namespace

std::string read_text(const std::string& path, std::size_t most) {
    const std::unique_ptr<std::FILE, Close> file(std::fopen(path.c_str(), "rb"));
    if (!file) {
        refuse(path, Code::input_unreadable, std::strerror(errno), "name a file that can be read");
    }
    std::string text;
    std::string block(1 << 16, '\0');
    while (const std::size_t count = std::fread(block.data(), 1, block.size(), file.get())) {
        text.append(block, 0, count);
        if (text.size() > most) {
            refuse(path, Code::input_limit,
                   "the file is larger than " + std::to_string(most >> 20) + " MiB",
                   "a file of this kind is a few kilobytes");
        }
    }
    if (std::ferror(file.get()) != 0) {
        refuse(path, Code::input_unreadable, std::strerror(errno), "name a file that can be read");
    }
    return text;
}

}  // namespace bowfront
