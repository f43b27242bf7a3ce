#!/usr/bin/env bash
# Same input, same bytes: drafts every client of examples/wardrobe with each program given (builds by
# other compilers and optimisers), twice, under the C locale and under one with a decimal comma, and
# compares all that comes out with what the first program wrote. PDF files are compared after
# `qpdf --qdf`, which takes them apart.
#
#   tests/determinism.sh PROGRAM [PROGRAM ...]
set -euo pipefail

[[ $# -gt 0 ]] || { printf 'Usage: tests/determinism.sh PROGRAM [PROGRAM ...]\n' >&2; exit 2; }
source_dir=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
comma_locale=pl_PL.UTF-8
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

[[ $(LC_ALL=$comma_locale locale decimal_point 2>/dev/null) == , ]] ||
  { printf 'determinism: the locale %s is missing; run .ci/install test\n' "$comma_locale" >&2; exit 1; }

# draft PROGRAM LOCALE CLIENT FOLDER: files, report and exit code of one run, in FOLDER.
draft() {
  local program=$1 locale=$2 client=$3 folder=$4 code=0
  mkdir -p "$folder/out"
  (cd "$folder" && LC_ALL=$locale "$program" draft "$client" --out out --write svg,pdf,json \
    --report json >stdout 2>stderr) || code=$?
  printf '%s\n' "$code" >"$folder/exit_code"
  take_pdfs_apart "$folder/out"
}

take_pdfs_apart() {
  local pdf
  while IFS= read -r -d '' pdf; do
    qpdf --qdf --static-id "$pdf" "$pdf.qdf"
    rm "$pdf"
  done < <(find "$1" -name '*.pdf' -print0)
}

# The first run must have succeeded and have written all three kinds of file.
check_complete() {
  local folder=$1 kind
  [[ $(cat "$folder/exit_code") == 0 ]] || { cat "$folder/stderr"; return 1; }
  for kind in svg pdf.qdf json; do
    [[ -n $(find "$folder/out" -name "*.$kind" -size +0) ]] || { printf 'no %s written\n' "$kind"; return 1; }
  done
}

count() {
  local what=$1
  shift
  if "$@" >"$work/why" 2>&1; then
    passed=$((passed + 1))
  else
    failed=$((failed + 1))
    printf 'FAILED %s\n' "$what"
    head -n 8 "$work/why" | cut -c 1-160
  fi
}

for client in "$source_dir"/examples/wardrobe/*.json; do
  name=$(basename "$client" .json)
  first=$work/$name/first
  draft "$(realpath "$1")" C "$client" "$first"
  count "$name: a complete run of $1" check_complete "$first"
  run=0
  for program in "$@"; do
    for locale in C "$comma_locale"; do
      run=$((run + 1))
      draft "$(realpath "$program")" "$locale" "$client" "$work/$name/$run"
      count "$name: $program under $locale" diff -r "$first" "$work/$name/$run"
    done
  done
  rm -rf "${work:?}/$name"
done

printf '%d passed, %d failed\n' "$passed" "$failed"
[[ $failed == 0 && $passed -gt 0 ]]
