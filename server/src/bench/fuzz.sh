#!/usr/bin/env bash
# A million seeded texts to rooms in every phase by every role, each room replayed; then honest rooms
# on a host that is attacked by fuzz, floods, wrong words, mute lines and members that never read:
# their p99 against the same without the attack, median of the pairs.
# Usage: bash server/src/bench/fuzz.sh [MESSAGES [PAIRS]]
# Last line: fuzz: N messages, M faults, p99-ratio R   (R is to be at most 1.5)
set -eu
. "$(dirname "$0")/classes.sh"
exec java -Xmx512m thinclick.server.load.AttackBench "$@"
