# Lists what can be broken in a layer's sources: one operator, constant or call at a time, a line each,
# as tab-separated  file  line  column  what stands there  what is put there.
#   awk -f tests/faults/candidates.awk src/fit/*.cpp
# Texts, comments and what only the compiler reads are left alone, and so are powers of ten: they are
# accuracies, where half as much again makes no difference that anybody should notice.

# The line with its texts blanked and its comment cut off, so that columns stay what they were.
function code_of(line,    out, i, c, quote) {
  out = ""
  quote = ""
  for (i = 1; i <= length(line); ++i) {
    c = substr(line, i, 1)
    if (quote != "") {
      if (c == "\\") { out = out "  "; ++i; continue }
      if (c == quote) quote = ""
      out = out (quote == "" ? c : " ")
    } else if (substr(line, i, 2) == "//") {
      break
    } else {
      if (c == "\"" || (c == "'" && substr(line, i - 1, 1) !~ /[0-9]/)) quote = c
      out = out c
    }
  }
  return out
}

function found(column, from, to) {
  printf "%s\t%d\t%d\t%s\t%s\n", FILENAME, FNR, column, from, to
}

# Every place of a fixed text. Texts are joined with + too; that is no arithmetic.
function each(code, from, to,    at, past, before, after) {
  past = 0
  while ((at = index(substr(code, past + 1), from)) > 0) {
    at += past
    before = substr(code, 1, at - 1)
    after = substr(code, at + length(from))
    if (!(from == " + " && (before ~ /"$/ || after ~ /^"/))) found(at, from, to)
    past = at + length(from) - 1
  }
}

function constants(code,    rest, past, text, before, after, to, power) {
  past = 0
  while (match(rest = substr(code, past + 1), /[0-9]+(\.[0-9]+)?/)) {
    text = substr(rest, RSTART, RLENGTH)
    before = past + RSTART > 1 ? substr(code, past + RSTART - 1, 1) : " "
    after = substr(code, past + RSTART + RLENGTH)
    power = substr(code, 1, past + RSTART - 1) ~ /[0-9]e-$/
    past += RSTART + RLENGTH - 1
    if (power || before ~ /[A-Za-z0-9_.']/ || after ~ /^[A-Za-z0-9_.'>]/) continue
    if (text ~ /\./) {
      to = sprintf("%.6g", text + 0 == 0 ? 1 : text * 1.5)
      if (to !~ /\./) to = to ".0"
    } else {
      to = text + 1
    }
    found(past - length(text) + 1, text, to)
  }
}

function swaps(code, a, b) {
  each(code, a, b)
  each(code, b, a)
}

FNR == 1 { before = ";" }
{
  code = code_of($0)
  begins = before ~ /[;{}:] *$/
  if (code ~ /[^ ]/) before = code
}
code ~ /^#|static_assert|operator|^ *(using|namespace|template|case|friend)[ <]/ { next }
{
  swaps(code, " < ", " > ")
  swaps(code, " <= ", " >= ")
  swaps(code, " == ", " != ")
  swaps(code, " + ", " - ")
  swaps(code, " * ", " / ")
  swaps(code, " += ", " -= ")
  swaps(code, " && ", " || ")
  swaps(code, "std::min(", "std::max(")
  swaps(code, "std::fmin(", "std::fmax(")
  swaps(code, "std::sin(", "std::cos(")
  swaps(code, " true;", " false;")
  swaps(code, " = true", " = false")
  each(code, "(!", "(")
  each(code, " !", " ")
  constants(code)
  # A condition that never holds, and a call that is not made.
  if (code ~ /^ *if \(/ && code !~ / = /) found(index(code, "if ("), "if (", "if (false && ")
  if (begins && FILENAME ~ /\.cpp$/ && code ~ /^ +[A-Za-z_][A-Za-z0-9_.:>-]*\(.*\);$/ && code !~ /^ +return[ (]/) {
    call = substr(code, match(code, /[^ ]/))
    call = substr(call, 1, index(call, "("))
    found(match(code, /[^ ]/), call, "if (false) " call)
  }
}
