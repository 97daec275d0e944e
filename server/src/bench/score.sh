#!/usr/bin/env bash
# What scoring costs, by JMH (about two minutes): a review of 2,000 attacks against a dense optimal
# assignment of the same take (one problem a player, by a general library), how the cost of an
# attack grows to 20,000 attacks, and a judgement during a take of 24 players.
# Usage: bash server/src/bench/score.sh
# Last line: score: ratio R growth G   (R is to be at least 50, G at most 1.25)
set -eu
cd "$(dirname "$0")/../../.."
mvn -q -B -Pjmh,draft -pl server -am test-compile
repository=${MAVEN_REPOSITORY:-$HOME/.m2/repository}
jars=$(find "$repository"/{tools/jackson,com/fasterxml/jackson/core/jackson-annotations,org/jspecify,org/apache/commons/commons-math3,org/openjdk/jmh,net/sf/jopt-simple,org/jgrapht/jgrapht-core,org/jheaps,org/apfloat} \
  -name '*.jar' 2>/dev/null | sort -V -r | tr '\n' ':')
exec java -cp "server/target/test-classes:server/target/classes:protocol/target/classes:$jars" \
  thinclick.server.scoring.ScoreRatios
