#!/bin/sh
# Checks one task's share of a list of drawings, as JSON lines. Started again it goes on where it was cut off.
#
#   scripts/everyNight.sh LIST OUT INDEX COUNT
#
# LIST has a file a line; of COUNT tasks the one of INDEX (from 0) takes every COUNTth. What schedules the tasks is an
# existing scheduler: it gives INDEX. JOBS (1) files are checked side by side; STILLHOT (stillhot) is the program.
set -eu
list=$1 out=$2 index=$3 count=$4

touch "$out"
# The line that was being written when the task was cut off is no answer.
whole=$(mktemp)
answered=$(mktemp)
trap 'rm -f "$whole" "$answered"' EXIT
grep '^{"file":.*}$' "$out" > "$whole" || true
cat "$whole" > "$out"
sed 's/^{"file":"\([^"]*\)".*/\1/' "$out" > "$answered"

status=0
awk -v index_="$index" -v count="$count" '(NR - 1) % count == index_' "$list" |
  { grep -vxFf "$answered" || true; } |
  tr '\n' '\0' |
  xargs -0 -r ${STILLHOT:-stillhot} check --json --jobs "${JOBS:-1}" >> "$out" || status=$?
# 123: some drawing has findings, or could not be read and said so on standard error. The others are answered.
[ "$status" -eq 0 ] || [ "$status" -eq 123 ]
