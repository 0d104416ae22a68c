#!/bin/sh
# Runs node among the second readers.
# usage: run.sh BUILD_FOLDER NODE_OPTION...
# Ends 77 (skipped) where they are not installed.
set -eu
cd "$1"
shift
test -d node_modules || exit 77
exec node "$@"
