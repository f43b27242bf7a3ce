// The program and the disk: what cannot be read or written is told, and nothing half is left.
#include "support/each.hpp"
#include "support/folder_contents.hpp"
#include "support/process.hpp"
#include "support/program.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <filesystem>
#include <sys/stat.h>

using blockwright::each;
using namespace blockwright_tests;
namespace fs = std::filesystem;

namespace {

bool tells(const ToolResult& result, const std::string& text) {
  return result.output.find(text) != std::string::npos;
}

}  // namespace

TEST_CASE("A file that outgrows its disk: exit 1, the file and the reason, older files unchanged") {
  const TempFolder folder;
  const std::string arguments =
      " draft " + kDemo + " --write json,svg,pdf --out " + folder.path("out");
  REQUIRE(call(arguments).exit_code == 0);
  const Contents before = contents_of(folder.path("out"));
  // Blocks of 512 bytes, or 1024 in some shells: less than any of the three.
  const ToolResult result =
      run_tool("trap '' XFSZ; ulimit -f 8; " + kProgram + arguments + " --allowance 15");
  CHECK(result.exit_code == 1);
  CHECK(tells(result, "[file.write] " + folder.path("out/ondine-marsh-toile.")));
  CHECK(tells(result, "File too large"));
  CHECK(tells(result, "older files are as they were"));
  CHECK(contents_of(folder.path("out")) == before);
}

TEST_CASE("A pipe, a device or a folder for a client file is refused at once") {
  const TempFolder folder;
  REQUIRE(::mkfifo(folder.path("pipe.json").c_str(), 0600) == 0);
  for (const std::string& file :
       each({folder.path("pipe.json"), std::string("/dev/zero"), folder.path("")})) {
    const ToolResult result = call("draft " + file + " --out " + folder.path("out"));
    CHECK(result.exit_code == 2);
    CHECK(tells(result, "[file.read] " + file));
  }
  CHECK_FALSE(fs::exists(folder.path("out")));
}

TEST_CASE("A link of an output's name is refused and not followed") {
  const TempFolder folder;
  const std::string outside = folder.write("outside", "untouched");
  fs::create_directory(folder.path("out"));
  fs::create_symlink(outside, folder.path("out/ondine-marsh-toile.pdf"));
  const ToolResult result = call("draft " + kDemo + " --out " + folder.path("out"));
  CHECK(result.exit_code == 1);
  CHECK(tells(result, "links are not followed"));
  CHECK(read_bytes(outside) == "untouched");
  CHECK_FALSE(fs::exists(folder.path("out/ondine-marsh-toile.svg")));
}

TEST_CASE("Client files with odd names write into the folder that was named and nowhere else") {
  const TempFolder folder;
  const std::string bytes = read_bytes(kDemo);
  fs::create_directory(folder.path("people"));
  const std::vector<std::string> names = {"a b.json",
                                          "it's.json",
                                          "line\nbreak.json",
                                          "-o.json",
                                          "x..json",
                                          "\xFF\xFE.json",
                                          "$(touch x).json",
                                          "\xE2\x88\x95"
                                          "etc.json",
                                          std::string(250, 'n') + ".json"};
  for (const std::string& name : names) (void)folder.write("people/" + name, bytes);
  const ToolResult result =
      call("batch " + folder.path("people") + " --write svg --out " + folder.path("out"));
  CHECK(result.exit_code == 0);
  CHECK(without_hidden(contents_of(folder.path("out"))).size() == names.size());
  CHECK(contents_of(folder.path("people")).size() == names.size());
  CHECK(std::distance(fs::directory_iterator(folder.path("")), {}) == 2);
}

TEST_CASE("A client file that cannot be corrected safely is left as it is, and its backup too") {
  const TempFolder folder;
  const std::string file = folder.write("me.json", read_bytes(kDemo));
  fs::create_directory(folder.path("me.json.bak"));
  const ToolResult result =
      call("fit " + file + " --add \"lower front neck 1.0\" --date 2026-03-21 --toile 1");
  CHECK(result.exit_code == 1);
  CHECK(tells(result, "me.json.bak: a folder has this name"));
  CHECK(read_bytes(file) == read_bytes(kDemo));
  CHECK(std::distance(fs::directory_iterator(folder.path("")), {}) == 2);
}

TEST_CASE("Two who correct one client file at the same time: no correction is lost") {
  const TempFolder folder(memory_folder());
  const std::string file = folder.write("me.json", read_bytes(kDemo));
  const auto added = [&](const std::string& correction, const std::string& output) {
    return Process(
        {kProgram, "fit", file, "--add", correction, "--date", "2026-03-21", "--toile", "1"},
        folder.path(output));
  };
  std::size_t done = 0;
  for (int i = 0; i < 5; ++i) {
    CAPTURE(i);
    Process one = added("lower front_neck 0.1", "one.txt");
    Process other = added("lower back_neck 0.1", "other.txt");
    for (Process* process : each({&one, &other})) {
      const int exit_code = process->wait();
      CHECK((exit_code == 0 || exit_code == 2));
      if (exit_code == 0) ++done;
    }
  }
  const auto client = nlohmann::json::parse(read_bytes(file));
  CHECK(done >= 5);
  CHECK(client["fittings"].back()["corrections"].size() == done);
}
