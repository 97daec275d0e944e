#!/usr/bin/env bash
# A million seeded texts to rooms in every phase by every role, each room replayed; then honest rooms
# on a host that is attacked by fuzz, floods, wrong words, mute lines and members that never read:
# their p99 against the same without the attack, median of the pairs.
# The server has one core; the players have the other, and the attacker what they leave of it: where the
# system allows it the players are in the real-time class, since at other computers, where they are, the
# attacker's own work would not keep them waiting.
# Usage: bash server/src/bench/fuzz.sh [MESSAGES [PAIRS]]   (default 1000000 5; five minutes)
# Last line: fuzz: N messages, M faults, p99-ratio R   (R is to be at most 1.5)
set -eu
. "$(dirname "$0")/classes.sh"
bench="thinclick.server.load.AttackBench"
if [ "$(nproc)" -ge 2 ] && command -v taskset > /dev/null; then
  if chrt -f 10 true 2> /dev/null; then
    exec chrt -f 10 taskset -c 1 java -Xmx512m -Dserver.core=0 -Dothers.class=plain "$bench" "$@"
  fi
  exec taskset -c 1 java -Xmx512m -Dserver.core=0 "$bench" "$@"
fi
exec java -Xmx512m "$bench" "$@"
