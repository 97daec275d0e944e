#!/usr/bin/env bash
# How often the timing model's intervals hold the truth, in the full count of simulated takes (default 400 a figure, about
# three minutes of one core). The suite makes fewer.
set -eu
cd "$(dirname "$0")/../../.."
mvn -q -B -o -pl protocol,server -am test-compile -Dspotless.check.skip=true
path=$(find "$HOME/.m2/repository/org/apache/commons/commons-math3" -name 'commons-math3-*.jar' | sort | tail -n 1)
exec java -cp "server/target/classes:server/target/test-classes:protocol/target/classes:$path" \
  thinclick.server.scoring.model.Simulations "${1:-400}"
