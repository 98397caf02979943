# One INTERFACE target carries our compiler flags, so that they bind our targets only.
add_library(lidwright_flags INTERFACE)
target_compile_options(lidwright_flags INTERFACE
  -Wall -Wextra -Wpedantic -Wshadow -Wnon-virtual-dtor -Wold-style-cast -Wcast-qual
  -Wunused -Woverloaded-virtual -Wdouble-promotion -Wimplicit-fallthrough $<$<BOOL:${LIDWRIGHT_WERROR}>:-Werror>
  # GCC takes the payload of an empty std::optional for an uninitialised value (GCC bug 80635).
  $<$<CXX_COMPILER_ID:GNU>:-Wno-maybe-uninitialized>
  # GCC 12 at -O3 sees impossible sizes inside std::string's own insert and operator+ (GCC bugs 105329,
  # 105651). The checked kinds do not, and keep these warnings.
  "$<$<AND:$<CONFIG:Release>,$<CXX_COMPILER_ID:GNU>,$<VERSION_LESS:$<CXX_COMPILER_VERSION>,13>>:-Wno-restrict;-Wno-stringop-overflow;-Wno-stringop-overread;-Wno-array-bounds>"
  # Same input, same bits: a*b+c is never fused, whatever the processor.
  -ffp-contract=off
  # No build path in the binaries: two builds of one source are the same.
  "-ffile-prefix-map=${CMAKE_SOURCE_DIR}=.")
if(LIDWRIGHT_SANITIZE)
  target_compile_options(lidwright_flags INTERFACE
    -fsanitize=address,undefined -fno-sanitize-recover=all -fno-omit-frame-pointer)
  target_link_options(lidwright_flags INTERFACE -fsanitize=address,undefined)
endif()
