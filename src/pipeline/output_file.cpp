#include "bowfront/pipeline/output_file.hpp"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>

#include "bowfront/base/error.hpp"
#include "write_all.hpp"

namespace bowfront {

void write_new_file(const std::string& path, std::string_view bytes) {
    const int file = open(path.c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
    if (file < 0) {
        if (errno == EEXIST) {
            throw IoError(path, "is there already, and is left as it is", Code::output_refused);
        }
        throw IoError(path, std::strerror(errno));
    }
    const bool written = write_all(file, bytes);
    int number = errno;
    if (close(file) != 0 || !written) {
        number = written ? errno : number;
        unlink(path.c_str());
        throw IoError(path, std::strerror(number));
    }
}

}  // namespace bowfront
