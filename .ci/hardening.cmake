# Protections that compilers and linkers offer against faults in the program: included by the top
# CMakeLists.txt, on by default, shown by tests/cli/hardening_test.cpp. A flag that the compiler does
# not know is left out. That the program may be loaded at any address is the default of Debian's
# compilers.
include(CheckCXXCompilerFlag)

foreach(flag IN ITEMS -fstack-protector-strong -fstack-clash-protection -fcf-protection)
  string(MAKE_C_IDENTIFIER "HAS${flag}" known)
  check_cxx_compiler_flag(${flag} ${known})
  if(${known})
    target_compile_options(blockwright_flags INTERFACE ${flag})
  endif()
endforeach()
# Bounds of the standard library's containers, and of the C library's calls where code is optimised.
target_compile_definitions(blockwright_flags INTERFACE _GLIBCXX_ASSERTIONS)
target_compile_options(blockwright_flags INTERFACE
  $<$<CONFIG:Release,RelWithDebInfo,MinSizeRel>:-U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=2>)
# Addresses of library functions are found once at the start, then cannot be written any more.
target_link_options(blockwright_flags INTERFACE -Wl,-z,relro,-z,now,-z,noexecstack)
