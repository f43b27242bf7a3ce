// The program's own new_pdf_objects(): libqpdf, and the dozen libraries behind it, are loaded with
// the first PDF, not with every run; and if it is known that one comes, while it is drafted.
#include "blockwright/base/error.hpp"
#include "blockwright/write/writers.hpp"
#include "pdf_objects.hpp"

#include <dlfcn.h>
#include <filesystem>
#include <future>

namespace blockwright {
namespace writing {
namespace {

using NewObjects = PdfObjects*();

/// Beside the program where it was built, or where it was installed.
std::filesystem::path module_file() {
  const std::filesystem::path here = std::filesystem::read_symlink("/proc/self/exe").parent_path();
  const std::filesystem::path beside = here / BLOCKWRIGHT_PDF_MODULE;
  return std::filesystem::exists(beside) ? beside
                                         : here / "../lib/blockwright" / BLOCKWRIGHT_PDF_MODULE;
}

[[noreturn]] void refuse(const char* reason) {
  throw InputError(
      {.severity = Severity::Error,
       .code = "write.pdf",
       .where = BLOCKWRIGHT_PDF_MODULE,
       .message = std::string("the part of the program that writes PDF cannot be loaded: ") +
                  (reason == nullptr ? "no reason is known" : reason),
       .hint = "install blockwright again, with the libraries that it needs; until then use "
               "--write svg"});
}

NewObjects* loaded() {
  void* module = dlopen(module_file().c_str(), RTLD_NOW | RTLD_LOCAL);
  if (module == nullptr) refuse(dlerror());
  void* made = dlsym(module, "blockwright_new_pdf_objects");
  if (made == nullptr) refuse(dlerror());
  return reinterpret_cast<NewObjects*>(made);
}

struct Loading {
  NewObjects* made = nullptr;
  std::shared_future<void> done = std::async([this] { made = loaded(); }).share();
};

/// Begun with the first call, in a thread of its own if there is one to be had.
const Loading& loading() {
  static const Loading begun;
  return begun;
}

}  // namespace

std::unique_ptr<PdfObjects> new_pdf_objects() {
  loading().done.get();
  return std::unique_ptr<PdfObjects>(loading().made());
}

}  // namespace writing

Preparation prepare_pdf() { return Preparation(writing::loading().done); }

}  // namespace blockwright
