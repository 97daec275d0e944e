#!/usr/bin/env bash
# Makes the class-data archive beside the packaged server: starts it once, stops it, and keeps what
# it had loaded. Java takes it with -XX:SharedArchiveFile; without it everything works, slower.
# Usage: archive.sh JAR ARCHIVE
set -eu
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
"${JAVA_HOME:+$JAVA_HOME/bin/}java" -XX:ArchiveClassesAtExit="$2" -jar "$1" serve --port 0 --db "$folder/room.db" \
  > "$folder/out" 2> "$folder/err" &
host=$!
for _ in $(seq 600); do
  grep -q '/room' "$folder/out" && break
  kill -0 $host 2> /dev/null || break
  sleep .1
done
kill -TERM $host 2> /dev/null || true
wait $host || true
[ -s "$2" ] || { cat "$folder/err"; echo "no archive was made"; exit 1; }
