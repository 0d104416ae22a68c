#!/bin/sh
# Installs the second readers beside a copy of their scripts, out of the source tree.
# usage: install.sh SOURCE_FOLDER BUILD_FOLDER
# Ends 77 (skipped) where they are not installed yet and no package registry answers.
set -eu
source=$1
build=$2
mkdir -p "$build"
cp "$source"/package.json "$source"/package-lock.json "$source"/*.mjs "$build"
if cmp -s "$build/package-lock.json" "$build/node_modules/.installed-lock"; then
  exit 0
fi
npm ping >/dev/null 2>&1 || exit 77
npm ci --prefix "$build" --ignore-scripts --no-audit --no-fund
cp "$build/package-lock.json" "$build/node_modules/.installed-lock"
