# Digests of the files that are written (nettle). Also installed, for users of the static libraries.
find_library(BOWFRONT_NETTLE nettle REQUIRED)
add_library(bowfront_digest INTERFACE)
target_link_libraries(bowfront_digest INTERFACE ${BOWFRONT_NETTLE})
