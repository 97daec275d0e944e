#!/usr/bin/env bash
# From a key pressed on a virtual display to its stamp, in ms: on a page where nothing moves, and on
# the stand while a take runs with stand-ins (the last line). Needs Xvfb and xvfb-run. A minute.
# Usage: bash client/src/bench/keys.sh
# Last line: keys: p50 A p99 B
set -eu
. "$(dirname "$0")/classes.sh"
command -v xvfb-run > /dev/null || { echo "no virtual display: xvfb-run is not installed"; echo "keys: p50 none p99 none"; exit 0; }
exec xvfb-run -a -s "-screen 0 1366x768x24" java -Dprism.order=sw -Dthinclick.log=WARN \
  thinclick.client.window.KeysBench
