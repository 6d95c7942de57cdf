#!/usr/bin/env bash
# Makes the pictures of the tutorials anew, from the program as it is built (mvn package). Needs a screen, or xvfb-run, which makes one.
set -euo pipefail
cd "$(dirname "$0")/../.."
screen=()
if [ -z "${DISPLAY:-}" ]; then
  screen=(xvfb-run -a -s "-screen 0 1400x900x24 +extension GLX")
fi
mkdir -p docs/tutorials/pictures
"${screen[@]}" java -cp simulator/cli/target/baymist.jar baymist.viewer.fx.TutorialPictures scenes docs/tutorials/pictures
