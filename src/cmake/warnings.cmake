# Warnings as errors, on every target of ours and on none of our users'.
add_library(bowfront_warnings INTERFACE)
target_compile_options(bowfront_warnings INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion -Wnon-virtual-dtor
  -Wold-style-cast -Wcast-align -Woverloaded-virtual -Wdouble-promotion -Wformat=2)
if(BOWFRONT_WERROR)
  target_compile_options(bowfront_warnings INTERFACE -Werror)
endif()
