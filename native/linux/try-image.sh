#!/usr/bin/env bash
# Tries the package that native/linux/image.sh has made: unpacks it into a folder of its own, makes the archive of
# classes as its installation does, makes a pattern from a sample photo, and opens the window, alone and with the job.
# Prints sizes and times. Fails where a step fails, or where a window takes longer than two minutes. Needs a display, and
# xwininfo of x11-utils.
set -euo pipefail
cd "$(dirname "$0")/../.."
root=$(mktemp -d)
trap 'rm -rf "$root"' EXIT
export XDG_CONFIG_HOME=$root/user XDG_STATE_HOME=$root/user XDG_CACHE_HOME=$root/cache

package=$(ls target/image/*.deb)
dpkg-deb --extract "$package" "$root"
image=$root/opt/weltwright
sh "$image/lib/app/archive.sh"
[[ -s $image/lib/app/weltwright.jsa ]]
grep -q 'Exec=.* %f' "$image"/lib/*.desktop
grep -q 'pattern="\*\.wwj"' "$image"/lib/*MimeInfo.xml

# A system without a desktop has no menus: xdg-utils fail there, and the installation must not.
dpkg-deb --control "$package" "$root/control"
mkdir "$root/no-desktop"
for command in xdg-desktop-menu xdg-mime xdg-icon-resource; do
    printf '#!/bin/sh\nexit 3\n' > "$root/no-desktop/$command"
done
printf '#!/bin/sh\n' > "$root/no-desktop/mkdir" # no folder of this system is made
chmod +x "$root"/no-desktop/*
PATH=$root/no-desktop:$PATH sh "$root/control/postinst" configure 2>/dev/null
echo "Package $(($(stat -c %s "$package") / 1000000)) MB, installed $(($(du -sb "$image" | cut -f 1) / 1000000)) MB"

# No Java but the image's own.
unset JAVA_HOME
export PATH=/usr/bin:/bin

begun=$(date +%s%N)
"$image/bin/weltwright" make sample-images/drop-point.jpg --handle-thickness 19mm -o "$root/made" >/dev/null
echo "Pattern from a photo in $((($(date +%s%N) - begun) / 1000000)) ms"
for made in "$root"/made/{drop-point.wwj,drop-point-pattern.pdf,drop-point-pattern.svg,drop-point-pattern.dxf}; do
    [[ -s $made ]]
done
[[ ! -e $XDG_CACHE_HOME ]] # nothing was unpacked

for given in "" "$root/made/drop-point.wwj"; do
    begun=$(date +%s%N)
    "$image/bin/weltwright" ${given:+"$given"} &
    started=$!
    until xwininfo -root -tree | grep '"[^"]*Weltwright' >/dev/null; do
        kill -0 "$started"
        ((($(date +%s%N) - begun) / 1000000000 < 120))
        sleep 0.02
    done
    echo "First window${given:+ with a job} after $((($(date +%s%N) - begun) / 1000000)) ms"
    sleep 3
    kill "$started"
    wait "$started" || true
    [[ ! -s $root/user/weltwright/defects.log ]]
done
echo "licences: $("$image/bin/weltwright" licences | wc -l) components"
