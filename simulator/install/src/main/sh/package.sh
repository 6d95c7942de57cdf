#!/usr/bin/env bash
# Builds the application folder and the Debian package under target/: program, trimmed Java runtime, scenes, models, guide,
# manual pages, shell completion. Called by Maven; needs jpackage (JDK 17 or later), dpkg-deb and fakeroot.
set -euo pipefail
version=$1
here=$(pwd)
root=$(cd ../.. && pwd)
out=$here/target
jdk=${JAVA_HOME%/jre}
for tool in jlink jpackage jdeps; do
  [ -x "$jdk/bin/$tool" ] || { echo "package.sh: $jdk has no $tool; a full JDK 17 or later is needed." >&2; exit 1; }
done
for tool in dpkg-deb fakeroot; do
  command -v "$tool" >/dev/null || { echo "package.sh: $tool is missing (apt-get install dpkg fakeroot)." >&2; exit 1; }
done

rm -rf "$out/input" "$out/runtime" "$out/image" "$out/deb"
mkdir -p "$out/input" "$out/image" "$out/deb"
cp "$root/simulator/cli/target/baymist.jar" "$out/input/"

# The runtime holds what the jar needs, the vector unit and nothing else, with an archive of the JDK's own classes.
modules=$("$jdk/bin/jdeps" --ignore-missing-deps --multi-release 17 --print-module-deps "$out/input/baymist.jar")
"$jdk/bin/jlink" --add-modules "$modules,jdk.incubator.vector,jdk.zipfs" --strip-debug --no-man-pages --no-header-files \
  --output "$out/runtime"
"$out/runtime/bin/java" -Xshare:dump >/dev/null

"$jdk/bin/jpackage" --type app-image --name baymist --app-version "$version" --dest "$out/image" --input "$out/input" \
  --main-jar baymist.jar --runtime-image "$out/runtime" --icon "$here/src/main/deb/baymist.png" \
  --java-options '-XX:SharedArchiveFile=$APPDIR/baymist.jsa' --java-options '-Xlog:cds=off' --java-options '-Xlog:cds+dynamic=off'
image=$out/image/baymist

share=$image/lib/app/share
mkdir -p "$share/man/man1"
for page in "$out"/man/*.1; do gzip -9nc "$page" >"$share/man/man1/$(basename "$page").gz"; done
java="$image/lib/runtime/bin/java"
"$java" -jar "$out/input/baymist.jar" completion >"$share/baymist.bash"
cp -r "$root/scenes" "$root/models" "$share/"
rm -rf "$share/scenes/verification"
mkdir -p "$share/doc"
cp -r "$root/docs/guide" "$root/docs/formats" "$root/docs/troubleshooting.md" "$share/doc/"
install -m 755 "$here/src/main/sh/warm-up.sh" "$image/lib/app/warm-up"
"$image/lib/app/warm-up"

rm "$image/lib/app/baymist.jsa"
"$jdk/bin/jpackage" --type deb --name baymist --app-version "$version" --dest "$out/deb" --app-image "$image" \
  --resource-dir "$here/src/main/deb" --linux-shortcut --linux-app-category science --linux-menu-group 'Science;Engineering' \
  --description 'Spray reach of oil fog in closed sheet-metal cavities' --vendor 'The Baymist maintainers' --linux-deb-maintainer maintainers@baymist.invalid
"$image/lib/app/warm-up"
ls -l "$out/deb"
