#include "blockwright/base/error.hpp"
#include "blockwright/job/job.hpp"
#include "blockwright/measure/client.hpp"
#include "blockwright/style/style.hpp"

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
    "allowance": { "type": "number", "minimum": 0, "maximum": 60, "description": "mm" },
    "margin": { "type": "number", "minimum": 7, "maximum": 40, "description": "mm" },
    "overlap": { "type": "number", "minimum": 0, "maximum": 40, "description": "mm" },
    "anonymous": { "type": "boolean", "description": "Leave the client's name off the paper and out of the report." },
    "steps": { "type": "boolean", "description": "draft: print the draft as instructions." }
  }
}
)";

constexpr const char* kPatternSchema = R"({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "title": "blockwright pattern",
  "description": "Stitch lines of the pieces in mm; each piece has its origin at the centre waist, x to the side, y up. Edges run anticlockwise round the piece.",
  "type": "object",
  "required": ["format", "unit", "pieces", "seams"],
  "properties": {
    "format": { "const": "blockwright-pattern-1" },
    "unit": { "const": "mm" },
    "pieces": { "type": "array", "items": { "$ref": "#/$defs/piece" } },
    "seams": {
      "type": "array",
      "items": {
        "type": "object",
        "required": ["name", "a", "b", "ease_in"],
        "properties": {
          "name": { "type": "string" },
          "a": { "$ref": "#/$defs/side" },
          "b": { "$ref": "#/$defs/side" },
          "ease_in": { "type": "number", "description": "how much longer side a is cut, mm" },
          "b_runs_back": { "type": "boolean", "description": "the paths of b run against those of a" }
        }
      }
    }
  },
  "$defs": {
    "side": {
      "type": "array", "minItems": 1,
      "items": { "type": "array", "items": { "type": "string" }, "minItems": 2, "maxItems": 2 },
      "description": "piece and edge of each part of one side of a seam, in order"
    },
    "point": { "type": "array", "items": { "type": "number" }, "minItems": 2, "maxItems": 2 },
    "path": {
      "type": "array",
      "items": {
        "type": "array",
        "prefixItems": [ { "enum": ["M", "L", "C"] } ],
        "items": { "type": "number" },
        "minItems": 3, "maxItems": 7
      }
    },
    "piece": {
      "type": "object",
      "required": ["name", "edges", "darts", "landmarks", "notches", "grain"],
      "properties": {
        "name": { "type": "string" },
        "edges": {
          "type": "array",
          "items": {
            "type": "object",
            "required": ["name", "role", "path"],
            "properties": {
              "name": { "type": "string" },
              "role": { "enum": ["seam", "fold", "hem", "opening"] },
              "path": { "$ref": "#/$defs/path" }
            }
          }
        },
        "darts": {
          "type": "array",
          "items": {
            "type": "object",
            "required": ["name", "edge", "apex", "point", "legs"],
            "properties": {
              "name": { "type": "string" },
              "edge": { "type": "string" },
              "apex": { "$ref": "#/$defs/point" },
              "point": { "$ref": "#/$defs/point" },
              "legs": { "type": "array", "items": { "$ref": "#/$defs/point" }, "minItems": 2, "maxItems": 2 },
              "cap": { "$ref": "#/$defs/point" },
              "pressed_to": { "enum": [0, 1], "description": "the leg that the folded dart is pressed towards" }
            }
          }
        },
        "fullness": {
          "type": "array",
          "items": {
            "type": "object",
            "required": ["name", "edge", "kind", "from", "to", "sewn"],
            "properties": {
              "name": { "type": "string" },
              "edge": { "type": "string" },
              "kind": { "enum": ["gathers", "ease"] },
              "from": { "type": "number", "description": "mm from the start of the edge" },
              "to": { "type": "number" },
              "sewn": { "type": "number", "description": "mm when drawn up" }
            }
          }
        },
        "landmarks": { "type": "object", "additionalProperties": { "$ref": "#/$defs/point" } },
        "notches": {
          "type": "array",
          "items": {
            "type": "object",
            "required": ["name", "edge", "along", "at", "count"],
            "properties": {
              "name": { "type": "string" },
              "edge": { "type": "string" },
              "along": { "type": "number", "description": "mm from the start of the edge" },
              "at": { "$ref": "#/$defs/point" },
              "count": { "type": "integer", "description": "single or double" },
              "mate_piece": { "type": "string" },
              "mate_edge": { "type": "string" }
            }
          }
        },
        "cut_on": { "enum": ["fold", "pair", "one"] },
        "balance_lines": {
          "type": "array",
          "items": {
            "type": "object",
            "properties": { "name": { "type": "string" }, "path": { "$ref": "#/$defs/path" } }
          }
        },
        "grain": { "type": "array", "items": { "$ref": "#/$defs/point" }, "minItems": 2, "maxItems": 2 }
      }
    }
  }
}
)";

constexpr const char* kReportSchema = R"({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "title": "blockwright report",
  "description": "What one run found. Lengths in mm, angles in degrees, rounded to 0.0001.",
  "type": "object",
  "required": ["client", "session", "problems", "measure_back", "darts", "lengths", "files"],
  "properties": {
    "client": { "type": ["string", "null"] },
    "session": { "type": ["string", "null"] },
    "file": { "type": "string", "description": "Only where no client could be read." },
    "problems": {
      "type": "array",
      "items": {
        "type": "object",
        "required": ["severity", "code", "where", "message", "hint"],
        "properties": {
          "severity": { "enum": ["note", "warning", "error"] },
          "code": { "type": "string" },
          "where": { "type": "string" },
          "message": { "type": "string" },
          "hint": { "type": "string" }
        }
      }
    },
    "measure_back": {
      "type": "array",
      "items": {
        "type": "object",
        "required": ["name", "source"],
        "properties": {
          "name": { "type": "string" },
          "source": { "enum": ["taped", "estimated"] },
          "body_mm": { "type": "number" },
          "ease_mm": { "type": "number" },
          "pattern_mm": { "type": "number" },
          "residual_mm": { "type": "number", "description": "pattern less body less ease" },
          "adjusted_mm": { "type": "number", "description": "what reconciling did" },
          "doubt_mm": { "type": "number", "description": "residual standard deviation of an estimate" },
          "body_deg": { "type": "number", "description": "for the shoulder slope, in place of mm" },
          "ease_deg": { "type": "number" },
          "pattern_deg": { "type": "number" },
          "residual_deg": { "type": "number" },
          "adjusted_deg": { "type": "number" },
          "doubt_deg": { "type": "number" }
        }
      }
    },
    "darts": {
      "type": "array",
      "items": {
        "type": "object",
        "required": ["piece", "name", "angle_deg", "intake_mm"],
        "properties": {
          "piece": { "type": "string" },
          "name": { "type": "string" },
          "angle_deg": { "type": "number" },
          "intake_mm": { "type": "number" },
          "leg_mm": { "type": "number", "description": "leg end to apex" }
        }
      }
    },
    "lengths": { "type": "object", "additionalProperties": { "type": "number" } },
    "corrections": {
      "type": "array",
      "description": "Only where corrections of a fitting were applied.",
      "items": {
        "type": "object",
        "required": ["number", "date", "toile", "action", "place", "by_mm"],
        "properties": {
          "number": { "type": "integer" },
          "date": { "type": "string" },
          "toile": { "type": "integer" },
          "action": { "type": "string" },
          "place": { "type": "string" },
          "by_mm": { "type": "number" }
        }
      }
    },
    "fitted_lengths": { "type": "object", "additionalProperties": { "type": "number" }, "description": "The lengths after the corrections." },
    "steps": {
      "type": "array",
      "description": "Only of pivot and adapt: what was done to the block, in order.",
      "items": {
        "type": "object",
        "required": ["did", "darts", "lengths", "remarks"],
        "properties": {
          "did": { "type": "string" },
          "darts": { "$ref": "#/properties/darts" },
          "lengths": { "$ref": "#/properties/lengths" },
          "remarks": { "$ref": "#/properties/problems" }
        }
      }
    },
    "faired": {
      "type": "array",
      "description": "Seams that were faired across closed darts before printing.",
      "items": {
        "type": "object",
        "required": ["edge", "dart", "kink_deg", "moved_mm"],
        "properties": {
          "edge": { "type": "string" },
          "dart": { "type": "string" },
          "kink_deg": { "type": "number" },
          "moved_mm": { "type": "number" }
        }
      }
    },
    "files": { "type": "array", "items": { "type": "string" } }
  }
}
)";

}  // namespace

std::string schema_named(std::string_view name) {
  if (name == "client") return client_schema();
  if (name == "job") return kJobSchema;
  if (name == "pattern") return kPatternSchema;
  if (name == "report") return kReportSchema;
  if (name == "style") return style_schema();
  throw UsageError({Severity::Error, "schema.unknown", std::string(name),
                    "there is no schema of that name",
                    "use client, job, pattern, report or style"});
}

}  // namespace blockwright
