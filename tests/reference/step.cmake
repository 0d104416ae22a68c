# STEP files judged by the standard's text instead of by the kernel that wrote them, and compared
# between two processes.
find_package(Python3 REQUIRED COMPONENTS Interpreter)

add_executable(write_sample_step ${CMAKE_CURRENT_LIST_DIR}/write_sample_step.cpp)
target_link_libraries(write_sample_step PRIVATE bowfront_solids bowfront_warnings)
target_include_directories(write_sample_step PRIVATE ${PROJECT_SOURCE_DIR}/tests)

set(step_first ${CMAKE_CURRENT_BINARY_DIR}/sample_first.step)
set(step_second ${CMAKE_CURRENT_BINARY_DIR}/sample_second.step)
add_test(NAME step_sample_written COMMAND write_sample_step ${step_first})
add_test(NAME step_sample_written_again COMMAND write_sample_step ${step_second})
set_tests_properties(step_sample_written step_sample_written_again PROPERTIES
  FIXTURES_SETUP step_sample LABELS reference)

function(step_reference_test name)
  add_test(NAME ${name} COMMAND ${ARGN})
  set_tests_properties(${name} PROPERTIES FIXTURES_REQUIRED step_sample LABELS reference)
endfunction()

step_reference_test(step_bytes_equal_in_two_processes
  ${CMAKE_COMMAND} -E compare_files ${step_first} ${step_second})
step_reference_test(step_judged_by_the_standard
  ${Python3_EXECUTABLE} -B ${CMAKE_CURRENT_LIST_DIR}/step_judge.py ${step_first})
step_reference_test(step_judge_sees_broken_files
  ${Python3_EXECUTABLE} -B ${CMAKE_CURRENT_LIST_DIR}/step_judge_self_test.py ${step_first})
