#!/usr/bin/env bash
# From the start of the process to the window's third frame, in ms: the runnable jar, the same with
# an archive of its classes, and, where it has been made, the app image; each five times in turn.
# Needs Xvfb and xvfb-run, and the jar: mvn -B package -DskipTests. A minute.
# Usage: bash client/src/bench/start.sh
# Last line: start: median-ms M jar-ms J image-ms I (M with the archive; "none" where there is none)
set -eu
cd "$(dirname "$0")/../../.."
jar=client/target/thinclick.jar
image=client/target/image/Thinclick/bin/Thinclick
[ -f "$jar" ] || mvn -q -B -pl client -am package -DskipTests
command -v xvfb-run > /dev/null || { echo "no virtual display: xvfb-run is not installed"; echo "start: median-ms none jar-ms none image-ms none"; exit 0; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
export XDG_CONFIG_HOME="$work/config" XDG_DATA_HOME="$work/data"
say="-Dthinclick.start=say -Dprism.order=sw -XX:TieredStopAtLevel=1"
shown() { xvfb-run -a -s "-screen 0 1366x768x24" "$@" 2> /dev/null | sed -n 's/^third frame after ms: //p'; }
median() { sort -n "$1" | sed -n 3p; }
shown java $say -XX:ArchiveClassesAtExit="$work/classes.jsa" -jar "$jar" > /dev/null
for run in 1 2 3 4 5; do
  shown java $say -jar "$jar" >> "$work/jar"
  shown java $say -XX:SharedArchiveFile="$work/classes.jsa" -jar "$jar" >> "$work/archive"
  if [ -x "$image" ]; then JAVA_TOOL_OPTIONS="-Dthinclick.start=say -Dprism.order=sw" shown "$image" >> "$work/image"; fi
done
echo "jar:     $(sort -n "$work/jar" | tr '\n' ' ')"
echo "archive: $(sort -n "$work/archive" | tr '\n' ' ')"
pictured=none
if [ -f "$work/image" ]; then echo "image:   $(sort -n "$work/image" | tr '\n' ' ')"; pictured=$(median "$work/image"); fi
echo "start: median-ms $(median "$work/archive") jar-ms $(median "$work/jar") image-ms $pictured"
