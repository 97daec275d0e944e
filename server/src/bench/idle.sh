#!/usr/bin/env bash
# What a joined player costs who only sits there, resident bytes of the host's process, and how long a
# newcomer waits for the welcome beside them: plain and encrypted lines.
# Usage: bash server/src/bench/idle.sh [PLAIN [ENCRYPTED]]
# Last line: idle: plain N bytes-each B newcomer-ms M encrypted N bytes-each B newcomer-ms M   (M is to be below 100)
set -eu
. "$(dirname "$0")/classes.sh"
ulimit -n 65536 2> /dev/null || ulimit -n "$(ulimit -Hn)"
exec java -Xmx768m thinclick.server.load.IdleBench "$@"
