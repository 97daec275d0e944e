#!/usr/bin/env bash
# The clock is followed by the client, so its bench lives there; this is the same under one roof.
exec bash "$(dirname "$0")/../../../client/src/bench/clock.sh" "$@"
