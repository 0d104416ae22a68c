#include "bowfront/pipeline/output_file.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <utility>

#include "bowfront/base/error.hpp"
#include "write_all.hpp"

namespace bowfront {

NewFile::NewFile(std::string path) : path_(std::move(path)) {
    file_ = open(path_.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file_ < 0) {
        if (errno == EEXIST) {
            throw IoError(path_, "is there already, and is left as it is", Code::output_refused);
        }
        throw IoError(path_, std::strerror(errno));
    }
}

NewFile::~NewFile() {
    if (file_ >= 0) {
        close(file_);
        unlink(path_.c_str());
    }
}

void NewFile::write(std::string_view bytes) {
    if (!write_all(file_, bytes)) {
        throw IoError(path_, std::strerror(errno));
    }
}

void NewFile::finish() {
    if (close(std::exchange(file_, -1)) != 0) {
        const int number = errno;
        unlink(path_.c_str());
        throw IoError(path_, std::strerror(number));
    }
}

void write_new_file(const std::string& path, std::string_view bytes) {
    NewFile file(path);
    file.write(bytes);
    file.finish();
}

}  // namespace bowfront
