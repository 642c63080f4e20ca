#!/bin/sh
# Makes an image of Weltwright for macOS that brings its own Java: target/image/Weltwright.app, and a disk image of it,
# which opens jobs (.wwj) by a double click.
#
#   mvn -DskipTests package && native/macos/image.sh
#
# Needs a JDK 17. OpenCV stays in its jar and is unpacked by the first start, as README says. The image is not signed.
set -eu
cd "$(dirname "$0")/../.."
[ -f target/weltwright.jar ] || { echo "Build the program first: mvn -DskipTests package" >&2; exit 1; }
jdk=${JAVA_HOME:-$(/usr/libexec/java_home -v 17)}
out=target/image
rm -rf "$out"
mkdir -p "$out/input/lib"
cp target/weltwright.jar target/bom.json LICENSE "$out/input"
cp target/lib/*.jar "$out/input/lib"

# With the archive of Java's own classes; it does not depend on where the image is installed.
"$jdk/bin/jlink" --add-modules java.base,java.desktop,java.management,java.prefs,java.sql,jdk.localedata,jdk.unsupported --include-locales=en,de \
    --vm=server --compress=2 --strip-java-debug-attributes --no-header-files --no-man-pages --output "$out/java"
"$out/java/bin/java" -Xshare:dump -XX:+UseSerialGC >/dev/null

cat > "$out/job.properties" <<ASSOCIATION
extension=wwj
mime-type=application/x-weltwright-job
description=Weltwright job
icon=native/icon/weltwright.icns
ASSOCIATION
# macOS wants a first number of 1 or more.
"$jdk/bin/jpackage" --type app-image --name Weltwright --app-version 1.0 --vendor Weltwright --dest "$out" \
    --icon native/icon/weltwright.icns --runtime-image "$out/java" --input "$out/input" --main-jar weltwright.jar \
    --file-associations "$out/job.properties" \
    --java-options "$(grep -v '^#' native/java.options | xargs)"
"$jdk/bin/jpackage" --type dmg --name Weltwright --app-image "$out/Weltwright.app" --app-version 1.0 --dest "$out"
