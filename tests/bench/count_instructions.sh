#!/usr/bin/env bash
# Instructions that `make` spends beside those of the bare-kernel program on the same solids.
# Counted, not timed, so that a busy machine changes nothing. Fails from one and a half times.
set -euo pipefail
valgrind=$1 program=$2 list_bodies=$3 bare_kernel=$4 case_file=$5 folder=$6

rm -rf "$folder"
mkdir -p "$folder"
"$list_bodies" "$case_file" > "$folder/bodies.txt"

counted() {  # NAME COMMAND...: runs the command and prints its instructions
    local name=$1
    shift
    "$valgrind" --tool=callgrind --callgrind-out-file="$folder/$name.callgrind" "$@" \
        > "$folder/$name.log" 2>&1 || { tail -5 "$folder/$name.log" >&2; return 1; }
    awk '/^summary:|^totals:/ { print $2; exit }' "$folder/$name.callgrind"
}

make=$(counted make "$program" make "$case_file" -o "$folder/out")
bare=$(counted bare "$bare_kernel" "$folder/bodies.txt" "$folder")
awk -v make="$make" -v bare="$bare" 'BEGIN {
    printf "make %.0f M, bare kernel %.0f M instructions: %.2f times\n", make / 1e6, bare / 1e6, make / bare
    exit make < 1.5 * bare ? 0 : 1
}'
