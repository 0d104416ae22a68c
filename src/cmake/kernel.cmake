# OpenCASCADE 7.6 by its libraries: the package's own configuration names libraries that its -dev
# packages do not bring, and gives no include directory.
find_path(BOWFRONT_OCCT_INCLUDE_DIR Standard_Version.hxx PATH_SUFFIXES opencascade REQUIRED)
file(STRINGS ${BOWFRONT_OCCT_INCLUDE_DIR}/Standard_Version.hxx _occt_version
     REGEX "define OCC_VERSION_COMPLETE")
string(REGEX MATCH "[0-9]+\\.[0-9]+\\.[0-9]+" BOWFRONT_OCCT_VERSION "${_occt_version}")
if(BOWFRONT_OCCT_VERSION VERSION_LESS 7.6 OR BOWFRONT_OCCT_VERSION VERSION_GREATER_EQUAL 7.7)
  message(FATAL_ERROR "OpenCASCADE ${BOWFRONT_OCCT_VERSION} found; 7.6.x is wanted")
endif()

# bowfront_occt_group(NAME TOOLKIT ...): an interface target; system includes, so that the kernel's
# headers are not held to our warnings.
function(bowfront_occt_group name)
  add_library(${name} INTERFACE)
  target_include_directories(${name} SYSTEM INTERFACE ${BOWFRONT_OCCT_INCLUDE_DIR})
  foreach(toolkit ${ARGN})
    find_library(BOWFRONT_OCCT_${toolkit} ${toolkit} REQUIRED)
    target_link_libraries(${name} INTERFACE ${BOWFRONT_OCCT_${toolkit}})
  endforeach()
  target_link_options(${name} INTERFACE -Wl,--as-needed)
endfunction()

bowfront_occt_group(bowfront_occt_model
  TKBO TKPrim TKShHealing TKTopAlgo TKGeomAlgo TKBRep TKGeomBase TKG3d TKG2d TKMath TKernel)
bowfront_occt_group(bowfront_occt_step TKSTEP TKSTEP209 TKSTEPAttr TKSTEPBase TKXSBase)
