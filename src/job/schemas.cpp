#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "embedded_docs.hpp"

#include <string>

namespace blockwright {
namespace {

constexpr const char* kJobSchema = R"({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "title": "blockwright job file",
  "description": "The options of one command (draft, pivot, adapt, batch, fit or compare) as keys; what is given on the command line wins. Keys that the command does not have are refused.",
  "type": "object",
  "required": ["format"],
  "additionalProperties": false,
  "properties": {
    "format": { "const": "blockwright-job-1" },
    "client": { "type": "string", "description": "Path of the client file." },
    "folder": { "type": "string", "description": "batch: folder with client files." },
    "clients": { "type": "array", "items": { "type": "string" }, "description": "batch: paths of client files, before those of the folder." },
    "subfolders": { "type": "boolean", "description": "batch: the client files of subfolders too." },
    "jobs": { "type": "integer", "minimum": 1, "maximum": 64, "description": "batch: clients worked on at the same time." },
    "again": { "type": "boolean", "description": "batch: also clients of whom nothing has changed." },
    "shard": { "type": "string", "pattern": "^([1-9][0-9]*/[1-9][0-9]*)?$", "description": "batch: which part of the folder of how many, such as 2/8." },
    "style": { "type": "string", "description": "adapt, batch: path of the style file." },
    "other": { "type": "string", "description": "compare: path of another client file." },
    "dart": { "type": "array", "items": { "type": "string" }, "description": "pivot: the dart of each move." },
    "to": { "type": "array", "items": { "type": "string" }, "description": "pivot: where each dart goes." },
    "part": { "type": "array", "items": { "type": "number", "exclusiveMinimum": 0, "maximum": 1 }, "description": "pivot: share of each dart that moves." },
    "angle": { "type": "array", "items": { "type": "number", "exclusiveMinimum": 0 }, "description": "pivot: degrees of each dart that move, in place of parts." },
    "split": { "type": "array", "items": { "type": "string" }, "description": "pivot: darts to split after the moves, such as front.waist:2." },
    "hold_back": { "type": "number", "description": "pivot: mm that the stitching stops short of the apex." },
    "overlay": { "type": "boolean", "description": "pivot, adapt: also the pieces over the block." },
    "add": { "type": "array", "items": { "type": "string" }, "description": "fit: corrections in words, such as lower front_neck 1.0." },
    "as": { "enum": ["", "length", "tuck_depth", "per_seam", "per_half", "whole_girth"], "description": "fit: how the amounts were read." },
    "side": { "enum": ["", "both", "left", "right"], "description": "fit: the side of the body." },
    "seen": { "type": "string", "description": "fit: what was seen on the body." },
    "date": { "type": "string", "description": "fit: of the fitting; empty for the file's newest." },
    "by": { "type": "string", "description": "fit: who fitted." },
    "note": { "type": "string", "description": "fit: a note on the fitting." },
    "undo": { "type": "array", "items": { "type": "integer", "minimum": 1 }, "description": "fit: numbers of corrections to withdraw." },
    "redo": { "type": "array", "items": { "type": "integer", "minimum": 1 }, "description": "fit: numbers of withdrawn corrections to apply again." },
    "list": { "type": "boolean", "description": "fit: show the corrections; done in any case." },
    "ask": { "type": "boolean", "description": "fit: ask at the prompt." },
    "session": { "type": ["string", "array"], "items": { "type": "string" }, "maxItems": 2, "description": "Date of the session; empty for the newest. compare: a list of up to two." },
    "toile": { "type": ["integer", "array"], "minimum": 0, "items": { "type": "integer", "minimum": 0 }, "maxItems": 2, "description": "Only the corrections before this toile; 0: all. fit: number of the toile; 0: the file's newest. compare: a list of up to two." },
    "align": { "enum": ["waist", "bust", "neck"], "description": "compare: what lies on what at the centre." },
    "out": { "type": "string", "description": "Folder for the output." },
    "write": { "type": "array", "items": { "enum": ["svg", "pdf", "json"] }, "description": "compare writes no json." },
    "paper": { "type": "string", "pattern": "^(a[0-4]|letter|legal|tabloid|roll:[0-9.]+|[0-9.]+x[0-9.]+)$" },
    "cut": { "enum": ["toile", "card", "net"] },
    "unit": { "enum": ["", "cm", "in"] },
    "report": { "enum": ["text", "json"] },
    "allowance": { "type": "number", "minimum": 0, "maximum": 60, "description": "mm; left out: 20, or 3/4 in for a person who works in inches" },
    "margin": { "type": "number", "minimum": 7, "maximum": 40, "description": "mm" },
    "overlap": { "type": "number", "minimum": 0, "maximum": 40, "description": "mm" },
    "anonymous": { "type": "boolean", "description": "Leave the client's name off the paper and out of the report." },
    "steps": { "type": "boolean", "description": "draft: print the draft as instructions." }
  }
}
)";

}  // namespace

std::string schema_named(std::string_view name) {
  if (name == "client") return std::string(docs::client_schema());
  if (name == "job") return kJobSchema;
  if (name == "pattern") return std::string(docs::pattern_schema());
  if (name == "report") return std::string(docs::report_schema());
  if (name == "style") return std::string(docs::style_schema());
  throw UsageError({Severity::Error, "schema.unknown", std::string(name),
                    "there is no schema of that name",
                    "use client, job, pattern, report or style"});
}

}  // namespace blockwright
