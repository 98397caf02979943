# Proves that every header compiles alone and may be included twice: one small source per header, compiled
# and thrown away. Headers are found by a glob here, and only here, so that none can be forgotten.
file(GLOB_RECURSE headers RELATIVE "${CMAKE_SOURCE_DIR}" CONFIGURE_DEPENDS
     "${CMAKE_SOURCE_DIR}/core/*.h" "${CMAKE_SOURCE_DIR}/app/*.h" "${CMAKE_SOURCE_DIR}/tests/*.h")

foreach(header IN LISTS headers)
  string(REGEX MATCH "^[a-z]+" part "${header}")
  set(source "${CMAKE_CURRENT_BINARY_DIR}/header_alone/${header}.cpp")
  file(CONFIGURE OUTPUT "${source}" CONTENT "#include \"${header}\"\n#include \"${header}\"\n")
  list(APPEND sources_${part} "${source}")
endforeach()

foreach(part core app tests)
  if(sources_${part})
    add_library(header_alone_${part} OBJECT ${sources_${part}})
    target_include_directories(header_alone_${part} PRIVATE "${CMAKE_SOURCE_DIR}")
    target_link_libraries(header_alone_${part} PRIVATE
      lidwright_flags Eigen3::Eigen Polyclipping::Polyclipping Boost::headers pugixml::pugixml
      nlohmann_json::nlohmann_json)
    target_compile_options(header_alone_${part} PRIVATE -O0 -g0)
    # moc has no business here: the libraries themselves run it.
    set_target_properties(header_alone_${part} PROPERTIES AUTOMOC OFF AUTOUIC OFF AUTORCC OFF)
  endif()
endforeach()
# core gets no Qt, so that a Qt header in it cannot even be found.
if(TARGET header_alone_app)
  target_compile_definitions(header_alone_app PRIVATE QT_NO_KEYWORDS)
  target_link_libraries(header_alone_app PRIVATE Qt6::Widgets Qt6::Svg Qt6::SvgWidgets Qt6::PrintSupport)
endif()
if(TARGET header_alone_tests)
  target_compile_definitions(header_alone_tests PRIVATE QT_NO_KEYWORDS LIDWRIGHT_SOURCE_DIR="${CMAKE_SOURCE_DIR}")
  target_link_libraries(header_alone_tests PRIVATE
    Qt6::Widgets Qt6::Svg Qt6::SvgWidgets Qt6::PrintSupport Qt6::Test GTest::gtest GTest::gmock benchmark::benchmark)
endif()
