#!/usr/bin/env bash
# A million seeded texts to rooms in every phase by every role, each room replayed; then honest rooms
# on a host that is attacked by fuzz, floods, wrong words, mute lines and members that never read:
# their p99 against the same without the attack, median of the pairs.
# The server has one core; the players have the other, and the attacker what they leave of it.
# Usage: bash server/src/bench/fuzz.sh [MESSAGES [PAIRS]]   (default 1000000 5; five minutes)
# Last line: fuzz: N messages, M faults, p99-ratio R   (R is to be at most 1.5)
set -eu
. "$(dirname "$0")/classes.sh"
if [ "$(nproc)" -ge 2 ] && command -v taskset > /dev/null; then
  exec taskset -c 1 java -Xmx512m -Dserver.core=0 thinclick.server.load.AttackBench "$@"
fi
exec java -Xmx512m thinclick.server.load.AttackBench "$@"
