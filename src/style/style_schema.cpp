#include "blockwright/style/style.hpp"

namespace blockwright {
namespace {

constexpr const char* kStyleSchema = R"({
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "title": "blockwright style file",
  "description": "Steps that make a garment's pieces from a block, in order. Lengths are in the file's unit, angles in degrees.",
  "type": "object",
  "required": ["format", "name", "steps"],
  "additionalProperties": false,
  "properties": {
    "$schema": { "type": "string" },
    "format": { "const": "blockwright-style-1" },
    "name": { "type": "string" },
    "unit": { "enum": ["cm", "in"] },
    "steps": { "type": "array", "items": { "$ref": "#/$defs/step" } }
  },
  "$defs": {
    "dart": { "type": "string", "description": "piece and dart, such as front.shoulder" },
    "place": { "type": "string", "description": "piece and place, with a fraction of the edge or a distance along it where wished: front.side, front.side:0.25, front.side:6cm" },
    "step": {
      "type": "object", "minProperties": 1, "maxProperties": 1, "additionalProperties": false,
      "properties": {
        "pivot": {
          "type": "object", "required": ["dart", "to"], "additionalProperties": false,
          "properties": {
            "dart": { "$ref": "#/$defs/dart" },
            "to": { "$ref": "#/$defs/place" },
            "part": { "type": "number", "exclusiveMinimum": 0, "maximum": 1 },
            "angle": { "type": "number", "exclusiveMinimum": 0 },
            "hold_back": { "type": "number", "minimum": 0 }
          }
        },
        "split": {
          "type": "object", "required": ["dart"], "additionalProperties": false,
          "properties": {
            "dart": { "$ref": "#/$defs/dart" },
            "shares": { "type": "array", "items": { "type": "number", "exclusiveMinimum": 0 }, "minItems": 2, "maxItems": 6 },
            "spacing": { "type": "number", "exclusiveMinimum": 0 },
            "group": { "enum": ["fanned", "parallel"] }
          }
        },
        "merge": {
          "type": "object", "required": ["dart", "into"], "additionalProperties": false,
          "properties": { "dart": { "$ref": "#/$defs/dart" }, "into": { "$ref": "#/$defs/dart" } }
        },
        "dart_point": {
          "type": "object", "required": ["dart", "hold_back"], "additionalProperties": false,
          "properties": { "dart": { "$ref": "#/$defs/dart" }, "hold_back": { "type": "number", "minimum": 0 } }
        },
        "press": {
          "type": "object", "required": ["dart", "towards"], "additionalProperties": false,
          "properties": { "dart": { "$ref": "#/$defs/dart" }, "towards": { "enum": ["centre", "side", "down", "up"] } }
        },
        "gathers": { "$ref": "#/$defs/take_up" },
        "ease": { "$ref": "#/$defs/take_up" },
        "spread": {
          "type": "object", "required": ["from", "to"], "additionalProperties": false,
          "properties": {
            "from": { "$ref": "#/$defs/place" },
            "to": { "$ref": "#/$defs/place" },
            "by": { "type": "number", "exclusiveMinimum": 0 },
            "lines": { "type": "integer", "minimum": 1, "maximum": 12 },
            "apart": { "type": "number", "exclusiveMinimum": 0 },
            "hinged": { "type": "boolean" },
            "gathered": { "type": "boolean" },
            "over": { "type": "number", "exclusiveMinimum": 0 }
          }
        },
        "panel_seam": {
          "type": "object", "required": ["from", "to"], "additionalProperties": false,
          "properties": {
            "from": { "$ref": "#/$defs/place" },
            "to": { "$ref": "#/$defs/place" },
            "centre_panel": { "type": "string" },
            "side_panel": { "type": "string" }
          }
        }
      }
    },
    "take_up": {
      "type": "object", "required": ["dart"], "additionalProperties": false,
      "properties": { "dart": { "$ref": "#/$defs/dart" }, "over": { "type": "number", "exclusiveMinimum": 0 } }
    }
  }
}
)";

}  // namespace

std::string style_schema() { return kStyleSchema; }

}  // namespace blockwright
