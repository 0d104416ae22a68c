# STEP files judged by the standard's text instead of by the kernel that wrote them, and compared
# between two processes.
add_executable(write_sample_step ${CMAKE_CURRENT_LIST_DIR}/write_sample_step.cpp)
target_link_libraries(write_sample_step PRIVATE bowfront_solids bowfront_warnings)
target_include_directories(write_sample_step PRIVATE ${PROJECT_SOURCE_DIR}/tests)

set(step_first ${CMAKE_CURRENT_BINARY_DIR}/sample_first.step)
set(step_second ${CMAKE_CURRENT_BINARY_DIR}/sample_second.step)
add_test(NAME step_sample_is_written COMMAND write_sample_step ${step_first})
add_test(NAME step_sample_is_written_again COMMAND write_sample_step ${step_second})
set_tests_properties(step_sample_is_written step_sample_is_written_again PROPERTIES
  LABELS reference FIXTURES_SETUP step_sample)

add_test(NAME step_bytes_are_equal_in_two_processes
  COMMAND ${CMAKE_COMMAND} -E compare_files ${step_first} ${step_second})
add_test(NAME step_judge_passes_sample
  COMMAND ${BOWFRONT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/step_judge.py ${step_first})
add_test(NAME step_judge_sees_broken_files
  COMMAND ${BOWFRONT_PYTHON} ${CMAKE_CURRENT_LIST_DIR}/step_judge_test.py ${step_first})
set_tests_properties(step_bytes_are_equal_in_two_processes step_judge_passes_sample
  step_judge_sees_broken_files PROPERTIES LABELS reference FIXTURES_REQUIRED step_sample)
# Byte code would land in the source tree.
set_property(TEST step_judge_passes_sample step_judge_sees_broken_files
  APPEND PROPERTY ENVIRONMENT PYTHONDONTWRITEBYTECODE=1)
