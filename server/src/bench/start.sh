#!/usr/bin/env bash
# From the command to a bound port: the packaged server with the class-data archive of the build,
# against a minimal Netty server with an archive of its own, in pairs.
# Usage: bash server/src/bench/start.sh [PAIRS]
# Last line: start: ratio R ours-ms A bare-ms B   (medians; R is to be below 1.5)
set -eu
. "$(dirname "$0")/classes.sh"
[ -f server/target/thinclick-server.jar ] || mvn -q -B -Pdraft -pl server -am package -DskipTests >&2
jar=server/target/thinclick-server.jar
archive=server/target/thinclick-server.jsa
[ -f "$archive" ] || bash server/src/build/archive.sh "$jar" "$archive"
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
mkdir "$folder/bare"
cp -r server/target/test-classes/thinclick "$folder/bare/"
(cd "$folder/bare" && jar cf ../bare.jar thinclick)
libraries=$(tr ':' '\n' < server/target/bench.path | grep -E '/(netty-[a-z-]*|jspecify)-[^/]*\.jar$' | paste -sd:)
bare="$folder/bare.jar:$libraries"

# Milliseconds until the program says where it listens.
until_bound() {
  local began line pid ended
  began=$(date +%s%N)
  exec 3< <(exec "$@" 2> /dev/null)
  pid=$!
  while read -r line <&3; do
    case "$line" in *://*/room*) break ;; esac
  done
  ended=$(date +%s%N)
  kill -TERM "$pid"
  wait "$pid" 2> /dev/null || true
  exec 3<&-
  echo $(((ended - began) / 1000000))
}

until_bound java -XX:ArchiveClassesAtExit="$folder/bare.jsa" -cp "$bare" thinclick.server.load.BareRelay > /dev/null
sleep 1
ours=() others=()
for pair in $(seq "${1:-5}"); do
  ours+=("$(until_bound java -XX:SharedArchiveFile="$archive" -jar "$jar" serve --port 0 --db "$folder/room$pair.db")")
  others+=("$(until_bound java -XX:SharedArchiveFile="$folder/bare.jsa" -cp "$bare" thinclick.server.load.BareRelay)")
  echo "pair $pair: ${ours[-1]} ms, bare ${others[-1]} ms"
done
median() { printf '%s\n' "$@" | sort -n | sed -n "$((($# + 1) / 2))p"; }
a=$(median "${ours[@]}")
b=$(median "${others[@]}")
echo "start: ratio $(awk "BEGIN { printf \"%.2f\", $a / $b }") ours-ms $a bare-ms $b"
