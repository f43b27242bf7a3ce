#include "run_program.hpp"

int main(int argc, char** argv) { return blockwright::run_program(argc, argv); }
