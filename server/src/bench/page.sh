#!/usr/bin/env bash
# What a page and a deal cost, by JMH (about two minutes): laying out a four-bar system and a handout
# in twelve keys, dealing 24 chairs over four bars in every way; then whole processes of the jar,
# five runs each, the median: the list, and a PDF in twelve keys, against the bare help of the same
# jar.
# Usage: mvn -q -B -DskipTests package && bash server/src/bench/page.sh
# Last line: page: list S s (R times the help) pdf S s (R times)   (at most 1 s and 2 s)
set -eu
cd "$(dirname "$0")/../../.."
mvn -q -B -Pjmh,draft -pl server -am test-compile
repository=${MAVEN_REPOSITORY:-$HOME/.m2/repository}
jars=$(find "$repository"/{org/openjdk/jmh,net/sf/jopt-simple,org/apache/commons/commons-math3} -name '*.jar' 2>/dev/null |
  sort -V -r | tr '\n' ':')
java -cp "server/target/test-classes:server/target/thinclick-server.jar:$jars" \
  org.openjdk.jmh.Main 'LayoutBenchmark|DealBenchmark' -v SILENT -foe true -rf text -rff /dev/stdout
jar=server/target/thinclick-server.jar
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
median() {
  for _ in 1 2 3 4 5; do
    /usr/bin/env bash -c 'TIMEFORMAT=%R; time "$@" >/dev/null 2>&1' _ "$@" 2>&1
  done | sort -n | sed -n 3p
}
help=$(median java -jar "$jar" --help)
list=$(median java -jar "$jar" compose --list)
pdf=$(median java -jar "$jar" compose "Long threes" --progression ii-V-I --all-keys \
  --instrument "tenor saxophone" --pdf "$out/keys.pdf" --replace)
awk -v h="$help" -v l="$list" -v p="$pdf" \
  'BEGIN { printf "page: list %.2f s (%.1f times the help) pdf %.2f s (%.1f times)\n", l, l / h, p, p / h }'
