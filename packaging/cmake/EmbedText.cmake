# lidwright_embed_text(OUT file.cpp HEADER "core/x.h" FUNCTION name FILE some.csv): writes a source file in which
# std::string lidwright::name() gives the bytes of some.csv. The text is cut at line ends into raw string
# literals of less than kPiece bytes, since compilers take no literal of any length (one of them 16380 bytes).
# An edit of the file writes the source anew.
if(NOT CMAKE_SCRIPT_MODE_FILE)
  set(LIDWRIGHT_EMBED_SCRIPT "${CMAKE_CURRENT_LIST_FILE}" CACHE INTERNAL "Writes texts as source files")
  function(lidwright_embed_text)
    cmake_parse_arguments(E "" "OUT;HEADER;FUNCTION;FILE" "" ${ARGN})
    add_custom_command(
      OUTPUT "${E_OUT}"
      COMMAND "${CMAKE_COMMAND}" "-DOUT=${E_OUT}" "-DHEADER=${E_HEADER}" "-DFUNCTION=${E_FUNCTION}" "-DFILE=${E_FILE}"
              -P "${LIDWRIGHT_EMBED_SCRIPT}"
      DEPENDS "${E_FILE}" "${LIDWRIGHT_EMBED_SCRIPT}"
      COMMENT "Embedding ${E_FILE}"
      VERBATIM)
  endfunction()
  return()
endif()

set(kPiece 8000)
file(READ "${FILE}" text)
# A backslash before blanks at a line's end is not kept by every compiler, not even in a raw literal.
foreach(mark ")lid\"" "\\")
  string(FIND "${text}" "${mark}" found)
  if(NOT found EQUAL -1)
    message(FATAL_ERROR "${FILE} holds ${mark}, which cannot be embedded")
  endif()
endforeach()
set(source "#include \"${HEADER}\"\n\nnamespace lidwright {\n\nstd::string ${FUNCTION}()\n{\n    std::string text;\n")
string(LENGTH "${text}" left)
while(left GREATER 0)
  string(SUBSTRING "${text}" 0 ${kPiece} piece)
  if(left GREATER kPiece)
    string(FIND "${piece}" "\n" end REVERSE)
    if(end EQUAL -1)
      message(FATAL_ERROR "${FILE} has a line of more than ${kPiece} bytes")
    endif()
    math(EXPR end "${end} + 1")
    string(SUBSTRING "${piece}" 0 ${end} piece)
  endif()
  string(LENGTH "${piece}" taken)
  string(SUBSTRING "${text}" ${taken} -1 text)
  string(LENGTH "${text}" left)
  string(APPEND source "    text += R\"lid(${piece})lid\";\n")
endwhile()
string(APPEND source "    return text;\n}\n\n}  // namespace lidwright\n")
file(WRITE "${OUT}" "${source}")
