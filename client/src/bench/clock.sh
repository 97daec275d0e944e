#!/usr/bin/env bash
# How well clients know room time: five simulated lines, after 5 s and 30 s, against every plain
# estimator on the same exchanges; drifting clocks after ten minutes. Ratios are to the best plain
# one, with floors of .25 ms (median) and .6 ms (p95).
# Usage: bash client/src/bench/clock.sh [RUNS]
# Last line: clock: worst-ratio R coverage P
set -eu
cd "$(dirname "$0")/../../.."
mvn -q -B -pl client -am test-compile
exec java -cp client/target/test-classes:client/target/classes:protocol/target/classes \
  thinclick.client.clock.ClockBench "$@"
