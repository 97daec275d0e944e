#!/usr/bin/env bash
# How much of a bare relay's pace is left once attacks are understood, written down and
# acknowledged: 100 rooms x 8 players x 8 attacks a second, each to the 7 others, against bare Netty
# in the same run; then the rate rises until either cannot follow.
# The server has one core, the players the other.
# Usage: bash server/src/bench/relay.sh [PAIRS [SECONDS [WARM-UP SECONDS]]]   (default 3 10 10; 1 8 12
#   is a look, 5 30 20 takes ten minutes). FLUSH=each: the bare relay writes each frame to the socket
#   by itself, instead of all of a loop's turn together, as ours does.
# Last line: relay: fixed A saturated B delivery-p99-ms C ack-p99-ms D
#   A: the relay's processor time an attack over ours; B: copies delivered a second, ours over the
#   relay's, both at a p99 of at most 50 ms; C, D: at the fixed rate, from the intended instant.
set -eu
. "$(dirname "$0")/classes.sh"
if [ "$(nproc)" -ge 2 ] && command -v taskset > /dev/null; then
  exec taskset -c 1 java -Xmx512m -XX:+UseSerialGC -Dserver.core=0 -Dbare.flush="${FLUSH:-turn}" thinclick.server.load.RelayBench "$@"
fi
exec java -Xmx512m -Dbare.flush="${FLUSH:-turn}" thinclick.server.load.RelayBench "$@"
