#!/usr/bin/env bash
# A class in real time on this computer: a host in a process of its own, and players in another, each
# over its own socket, with its own estimate of room time, its own attacks and its own sound loop into
# an output that drains by the clock. One take at 120; in the middle the click is planned anew.
#
# lost:        attacks that were played and are not in the take afterwards
# doubled:     attacks that are in the take more than once
# late-clicks: clicks, summed over the players' computers, that began to sound more than 2 ms after
#              their instant by that computer's own clock, or not at all, or of whose stage or plan
#              the computer heard later than a bar (2 s) ahead
#
# Usage: bash client/src/bench/class.sh [SECONDS [PLAYERS]]    (180 and 24; a look: 24 8)
# Last line: class: players 24 lost 0 doubled 0 late-clicks N
set -eu
. "$(dirname "$0")/classes.sh"
exec java -Dthinclick.log=WARN thinclick.client.rehearse.ClassBench "${1:-180}" "${2:-24}"
