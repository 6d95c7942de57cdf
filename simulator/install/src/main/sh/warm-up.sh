#!/bin/sh
# Keeps the loaded classes of a check in an archive beside the program, so that it starts in a fraction of the time. The archive
# belongs to this place: run this again after moving the folder. Without it the program works, only its start is slower.
set -e
app=$(cd "$(dirname "$0")" && pwd)
scene=$app/share/scenes/control-surface-pin-forward.yaml
"$app/../runtime/bin/java" -XX:ArchiveClassesAtExit="$app/baymist.jsa" -Xlog:cds=off -Xlog:cds+dynamic=off \
  -cp "$app/baymist.jar" baymist.cli.Main check "$scene" >/dev/null 2>&1
