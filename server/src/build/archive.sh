#!/usr/bin/env bash
# Makes the class-data archive beside the packaged server: starts it once to see which classes it
# needs, asks after its health, drains it, and keeps those classes ready. Java takes the archive with
# -XX:SharedArchiveFile, for this very jar where it lies now; without it everything works, slower.
# Usage: archive.sh JAR ARCHIVE
set -u
java="${JAVA_HOME:+$JAVA_HOME/bin/}java"
rm -f "$2"
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
"$java" -XX:DumpLoadedClassList="$folder/classes" -jar "$1" serve --port 0 --db "$folder/room.db" \
  > "$folder/out" 2> "$folder/err" &
host=$!
address=
for _ in $(seq 600); do
  address=$(sed -n 's|.*ws://\([^ ]*\)/room.*|\1|p' "$folder/out" | head -1)
  [ -n "$address" ] && break
  kill -0 $host 2> /dev/null || break
  sleep .1
done
# What answers somebody, too; and the host ends by itself, as a drained one does.
{ exec 3<> "/dev/tcp/${address%:*}/${address##*:}" &&
  printf 'GET /health HTTP/1.1\r\nHost: here\r\n\r\n' >&3 && cat <&3; } > "$folder/health" 2>> "$folder/err"
{ exec 3<> "/dev/tcp/${address%:*}/${address##*:}" &&
  printf 'POST /drain HTTP/1.1\r\nHost: here\r\nContent-Length: 0\r\n\r\n' >&3 && cat <&3; } > /dev/null 2>> "$folder/err"
for _ in $(seq 100); do
  kill -0 $host 2> /dev/null || break
  sleep .1
done
kill -TERM $host 2> /dev/null # only where it was not drained
wait $host
"$java" -Xshare:dump -XX:SharedClassListFile="$folder/classes" -XX:SharedArchiveFile="$2" -jar "$1" \
  > "$folder/dump" 2>&1
if [ ! -s "$2" ]; then
  cat "$folder/err" "$folder/dump" >&2
  echo "No archive of classes was made; the server starts without one, slower." >&2
fi
