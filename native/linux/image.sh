#!/usr/bin/env bash
# Makes an image of Weltwright for Linux that brings its own Java: a folder, and a deb of it.
#
#   mvn -DskipTests package && native/linux/image.sh
#
# The result is target/image/weltwright (the folder) and target/image/weltwright_VERSION_ARCH.deb, which installs it
# in /opt/weltwright, with an entry in the menu, and opens jobs (.wwj) by a double click.
# Needs a JDK 17 with jlink and jpackage, unzip, zip, binutils, fakeroot, patchelf and libblas3. With a display, the
# classes that the window loads go into the archive that makes it start faster; .ci/run brings one.
#
# What is left out of the libraries that the build fetches:
# - OpenCV's modules but those in $modules, and of its Java classes all but those in $packages. libopencv_java.so is
#   linked against 28 modules; those that it takes data from must be there (features2d, objdetect, videoio), the others
#   only when a function of theirs is called. InstalledLibrariesTest holds which functions the program calls.
# - OpenBLAS, 37 MB for fast products of large matrices. OpenCV hands it products of 100 rows or more (the refinement of
#   a homography does that); the reference BLAS of Debian does as well. It hands LAPACK only systems of 25 unknowns or
#   more, and the program has none: LAPACK is left out. Debian's BLAS and OpenCV call nothing in the Fortran libraries
#   that OpenBLAS brings (nm --dynamic --undefined-only), so they are left out, too.
# - JavaCPP, which unpacks the libraries: here they are unpacked already.
set -euo pipefail
here=$(cd "$(dirname "$0")/../.." && pwd)
cd "$here"

version=$(sed -n 's:.*<version>\(.*\)</version>.*:\1:p' native/pom.xml | head -n 1)
modules=(core imgproc imgcodecs flann features2d calib3d objdetect videoio)
packages=(core imgproc imgcodecs features2d calib3d objdetect utils)
# What jdeps --print-module-deps says of the program and its libraries; jdk.localedata has German numbers and dates.
java_modules=java.base,java.desktop,java.management,java.prefs,java.sql,jdk.localedata,jdk.unsupported

[[ -f target/weltwright.jar ]] || { echo "Build the program first: mvn -DskipTests package" >&2; exit 1; }
jdk=${JAVA_HOME:-$(dirname "$(dirname "$(readlink -f "$(command -v jlink)")")")}
out=$here/target/image
work=$out/work
rm -rf "$out"
mkdir -p "$work"/{natives,unpacked,input/lib,classes,resources}

echo "Libraries"
opencv=$(ls target/lib/opencv-*-linux-*.jar)
unzip -q "$opencv" 'org/bytedeco/*.so*' -d "$work/unpacked"
find "$work/unpacked" -name 'libopencv_java.so' -exec cp {} "$work/natives" \;
for module in "${modules[@]}"; do
    find "$work/unpacked" -name "libopencv_$module.so.*" -exec cp {} "$work/natives" \;
done
cp -L /usr/lib/*/blas/libblas.so.3 "$work/natives"
chmod u+w "$work"/natives/*
for library in "$work"/natives/*; do
    for needed in $(patchelf --print-needed "$library"); do
        case $needed in
            libopenblas.*) patchelf --replace-needed "$needed" libblas.so.3 "$library" ;;
            libopencv_*) [[ -f $work/natives/$needed ]] || patchelf --remove-needed "$needed" "$library" ;;
        esac
    done
    patchelf --set-rpath '$ORIGIN' "$library"
done

echo "Program"
cp target/weltwright.jar LICENSE target/bom.json "$work/input"
cp target/lib/*.jar "$work/input/lib"
# Copies a jar of target/lib to the image with some of its entries only: keep JAR PATTERN...
keep() {
    local jar=$1
    shift
    rm -rf "$work/classes" "$work/input/lib/$jar"
    mkdir "$work/classes"
    unzip -q "target/lib/$jar" "$@" -d "$work/classes" 2>/dev/null || [[ $? == 11 ]] # 11: a pattern without a match
    (cd "$work/classes" && zip -qrX "$work/input/lib/$jar" .)
}
# What is not needed when the program runs is left out, but never its licence, nor the licences of what it links.
for jar in target/lib/{opencv,openblas,javacpp}-*.jar; do
    keep "$(basename "$jar")" 'META-INF/MANIFEST.MF' 'META-INF/maven/*' 'META-INF/LICENSE*' '*/share/licenses/*'
done
bindings=$(basename "$(ls target/lib/opencv-*.jar | grep -v linux)")
keep "$bindings" 'META-INF/*' $(printf 'org/opencv/%s/* ' "${packages[@]}")
zip -qd "$work"/input/lib/flatlaf-[0-9]*.jar '*/natives/*windows*' '*/natives/*macos*'
cp native/linux/archive.sh "$work/input"
cp -r "$work/natives" "$work/input/natives"

echo "Java"
"$jdk/bin/jlink" --add-modules "$java_modules" --include-locales=en,de --vm=server --compress=2 --strip-java-debug-attributes \
    --no-header-files --no-man-pages --output "$work/java"
find "$work/java/bin" -type f ! -name java -delete
find "$work/java/lib" -name '*.so' -exec strip --strip-unneeded {} + # symbols that only debuggers read, 4 MB

echo "Image"
"$jdk/bin/jpackage" --type app-image --name weltwright --app-version "$version" --dest "$out" \
    --vendor "Weltwright" --description "Sheath patterns from a photo of a knife" --icon native/icon/weltwright.png \
    --runtime-image "$work/java" --input "$work/input" --main-jar weltwright.jar \
    --java-options "$(grep -v '^#' native/java.options | xargs)" \
    --java-options "-Dweltwright.natives=\$APPDIR/natives" \
    --java-options "-XX:SharedArchiveFile=\$APPDIR/weltwright.jsa"
image=$out/weltwright
# The program's launcher is started by a script that sets what the environment must say before Java runs.
mv "$image/bin/weltwright" "$image/bin/weltwright-java"
mv "$image/lib/app/weltwright.cfg" "$image/lib/app/weltwright-java.cfg"
install -m 755 native/linux/weltwright "$image/bin/weltwright"

echo "Archive of classes"
if [[ -n ${DISPLAY:-} ]]; then
    export XDG_CONFIG_HOME=$work/user XDG_STATE_HOME=$work/user XDG_CACHE_HOME=$work/user JDK_JAVA_OPTIONS=
    JAVA_TOOL_OPTIONS="-Xshare:off -XX:DumpLoadedClassList=$work/classes.lst" "$image/bin/weltwright" 2>/dev/null &
    started=$!
    sleep 20
    kill "$started"
    wait "$started" || true
    # What is loaded first, 25 MB, brings most of the gain: src/site/markdown/measurements.md has the times. What is made
    # of proxies at run time is in no archive.
    grep -v '\$Proxy[0-9]' "$work/classes.lst" | sed -n '1,3300p' > "$image/lib/app/classes.lst"
else
    echo "There is no display: the image starts slower than it could." >&2
fi

echo "Package"
cat > "$work/job.properties" <<ASSOCIATION
extension=wwj
mime-type=application/x-weltwright-job
description=Weltwright job
icon=$here/native/icon/weltwright.png
ASSOCIATION
cp native/linux/{postinst,prerm,weltwright.desktop} "$work/resources"
"$jdk/bin/jpackage" --type deb --name weltwright --app-image "$image" --app-version "$version" --dest "$out" \
    --vendor "Weltwright" --description "Sheath patterns from a photo of a knife" --license-file LICENSE \
    --resource-dir "$work/resources" --file-associations "$work/job.properties" --linux-shortcut \
    --linux-menu-group "Graphics;" --linux-app-category graphics --linux-deb-maintainer maintainers@users.noreply.example
rm -rf "$work"
du -sm "$image" | sed 's:\t.*: MB in target/image/weltwright, without the archive of classes:'
ls "$out"/*.deb
