#!/usr/bin/env bash
# Takes with a fault in each, every kind in turn: cut lines, half-open lines, duplicates, resends out
# of order, hostile text, slow readers, a jumping clock, two of these, kill -9, a full disk, a kill
# between commit and acknowledgement, failing fsync. After each: everything generated is stored once,
# what was acknowledged is stored at every moment, no buffer leaked, the database is whole.
# Usage: bash server/src/bench/faults.sh [RUNS [SEED]]   (300 runs: ten minutes)
# Last line: faults: N runs, M failed
set -eu
. "$(dirname "$0")/classes.sh"
library="$PWD/server/target/libfaults.so"
"${CC:-cc}" -shared -fPIC -O2 -Wall -o "$library" server/src/bench/faults.c -ldl
exec java -Xmx512m -Dio.netty.leakDetection.level=paranoid -Dfaults.disk="$library" \
  thinclick.server.load.FaultBench "$@"
