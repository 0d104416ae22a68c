# Two components: `program` for a maker, `development` for who builds on the libraries.

# The program looks for its module in ../lib/bowfront, so these two places are fixed.
install(TARGETS bowfront RUNTIME DESTINATION bin COMPONENT program)
install(TARGETS bowfront_kernel_module LIBRARY DESTINATION lib/bowfront COMPONENT program)

# bowfront_install(SET LIBRARY ...): libraries, their headers and their targets bowfront::<name>.
function(bowfront_install set)
  foreach(library ${ARGN})
    string(REPLACE bowfront_ "" name ${library})
    set_target_properties(${library} PROPERTIES EXPORT_NAME ${name})
    add_library(bowfront::${name} ALIAS ${library})
  endforeach()
  install(TARGETS ${ARGN} EXPORT bowfront-${set}
    ARCHIVE DESTINATION ${CMAKE_INSTALL_LIBDIR} COMPONENT development
    FILE_SET HEADERS DESTINATION ${CMAKE_INSTALL_INCLUDEDIR} COMPONENT development)
  install(EXPORT bowfront-${set} NAMESPACE bowfront:: DESTINATION ${bowfront_package_place}
    FILE bowfront-${set}.cmake COMPONENT development)
endfunction()

include(CMakePackageConfigHelpers)
set(bowfront_package_place ${CMAKE_INSTALL_LIBDIR}/cmake/bowfront)
bowfront_install(pure bowfront_core bowfront_io bowfront_report bowfront_pipeline)
bowfront_install(solid bowfront_solids bowfront_solid_shop)

configure_package_config_file(${CMAKE_CURRENT_LIST_DIR}/package.cmake.in
  ${CMAKE_CURRENT_BINARY_DIR}/bowfront-config.cmake
  INSTALL_DESTINATION ${bowfront_package_place} NO_SET_AND_CHECK_MACRO)
# Before version 1 a new minor version may change what it promises.
write_basic_package_version_file(${CMAKE_CURRENT_BINARY_DIR}/bowfront-config-version.cmake
  COMPATIBILITY SameMinorVersion)
install(FILES ${CMAKE_CURRENT_BINARY_DIR}/bowfront-config.cmake
  ${CMAKE_CURRENT_BINARY_DIR}/bowfront-config-version.cmake
  ${CMAKE_CURRENT_LIST_DIR}/kernel.cmake ${CMAKE_CURRENT_LIST_DIR}/digest.cmake
  DESTINATION ${bowfront_package_place} COMPONENT development)
file(GLOB bowfront_schemas ${PROJECT_SOURCE_DIR}/schemas/*.schema.json)
install(FILES ${bowfront_schemas} DESTINATION ${CMAKE_INSTALL_DATADIR}/bowfront/schemas
  COMPONENT development)
