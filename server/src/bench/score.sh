#!/usr/bin/env bash
# How fast a take is scored, against a dense optimal assignment of the same take (one problem a
# player, by a general library), and how the cost grows to ten times the attacks.
# Usage: bash server/src/bench/score.sh
# Last line: score: ratio R growth G   (R is to be at least 50, G at most 1.25)
set -eu
cd "$(dirname "$0")/../../.."
mvn -q -B -pl server -am test-compile
repository=${MAVEN_REPOSITORY:-$HOME/.m2/repository}
jars=$(find "$repository/tools/jackson" "$repository/com/fasterxml/jackson/core/jackson-annotations" \
  "$repository/org/jspecify" "$repository/org/apache/commons/commons-math3" "$repository/org/jgrapht/jgrapht-core" \
  "$repository/org/jheaps" "$repository/org/apfloat" -name '*.jar' 2>/dev/null | sort -V -r | tr '\n' ':')
exec java -Xmx4g -cp "server/target/test-classes:server/target/classes:protocol/target/classes:$jars" \
  thinclick.server.scoring.ScoreLoad
