#!/usr/bin/env bash
# From the command to a port that lets somebody in, and to the answer of /health on that very line:
# the packaged server with the class-data archive of the build, against a minimal Netty server with
# an archive of its own kind, in pairs, each found by knocking.
# Usage: bash server/src/bench/start.sh [PAIRS]   (default 5; half a minute)
# Last line: start: ratio R ours-ms A bare-ms B answered-ms C bare-answered-ms D processor-ratio P
#   (medians; R is to be below 1.5; P: processor time until the line was open)
set -eu
. "$(dirname "$0")/classes.sh"
jar=server/target/thinclick-server.jar
archive=server/target/thinclick-server.jsa
if [ ! -f "$jar" ] || [ -n "$(find server/src/main protocol/src/main -newer "$jar" -type f -print -quit)" ]; then
  mvn -q -B -Pdraft -pl server -am package -DskipTests >&2
fi
[ "$archive" -nt "$jar" ] || bash server/src/build/archive.sh "$jar" "$archive"
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
mkdir "$folder/bare"
cp -r server/target/test-classes/thinclick "$folder/bare/"
(cd "$folder/bare" && jar cf ../bare.jar thinclick)
libraries=$(tr ':' '\n' < server/target/bench.path | grep -E '/(netty-[a-z-]*|jspecify)-[^/]*\.jar$' | paste -sd:)
bare="$folder/bare.jar:$libraries"

# The bare one's archive, made of what it loads until it has answered, as ours is.
java -XX:DumpLoadedClassList="$folder/classes" -cp "$bare" thinclick.server.load.BareRelay > "$folder/out" 2> /dev/null &
pid=$!
until grep -qs '/room' "$folder/out"; do sleep .1; done
port=$(sed 's|.*:\([0-9]*\)/room.*|\1|' "$folder/out")
{ exec 3<> "/dev/tcp/127.0.0.1/$port" && printf 'GET /health HTTP/1.1\r\nHost: here\r\n\r\n' >&3 && cat <&3; } > /dev/null
kill $pid
wait $pid || true
java -Xshare:dump -XX:SharedClassListFile="$folder/classes" -XX:SharedArchiveFile="$folder/bare.jsa" -cp "$bare" > /dev/null 2>&1

java thinclick.server.load.StartBench "${1:-5}" \
  java -XX:SharedArchiveFile="$archive" -jar "$jar" serve --port PORT --db FOLDER/room.db \
  -- \
  java -XX:SharedArchiveFile="$folder/bare.jsa" -cp "$bare" thinclick.server.load.BareRelay PORT
