#!/usr/bin/env bash
# How exactly clicks come out: offline in samples over ninety minutes at +-500 ppm; against outputs
# by script whose position moves in lumps, in ms; spacing through the system's own sound path into a
# null sink (needs pulseaudio and libasound2-plugins; without them it says so). About a minute.
# Usage: bash client/src/bench/click.sh
# Last line: click: offline-samples A line-ms B sink-p99-ms C
set -eu
. "$(dirname "$0")/classes.sh"
exec java thinclick.client.sound.ClickBench
