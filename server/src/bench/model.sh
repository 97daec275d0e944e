#!/usr/bin/env bash
# How often intervals hold the truth, in the full count of simulated takes (default 400 a figure of the timing model, half as
# many a figure of the whole review; about six minutes of one core). The suite makes fewer.
# Usage: bash server/src/bench/model.sh [RUNS]
set -eu
cd "$(dirname "$0")/../../.."
mvn -q -B -Pdraft -pl server -am test-compile
repository=${MAVEN_REPOSITORY:-$HOME/.m2/repository}
jars=$(find "$repository"/{tools/jackson,com/fasterxml/jackson/core/jackson-annotations,org/jspecify,org/apache/commons/commons-math3} \
  -name '*.jar' 2>/dev/null | sort -V -r | tr '\n' ':')
path="server/target/classes:server/target/test-classes:protocol/target/classes:$jars"
java -cp "$path" thinclick.server.scoring.model.Simulations "${1:-400}"
exec java -cp "$path" thinclick.server.scoring.ReviewCoverage "$((${1:-400} / 2))"
