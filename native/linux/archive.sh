#!/bin/sh
# Makes the archive of classes with which Weltwright starts faster. Java takes it only where it was made for, so it is
# made where the image is installed; call this after moving the folder.
here=$(cd "$(dirname "$0")" && pwd)
[ -f "$here/classes.lst" ] || exit 0
exec "$here/../runtime/bin/java" -Xshare:dump -Xlog:disable -Xlog:all=error:stderr -XX:+UseSerialGC \
    -XX:SharedClassListFile="$here/classes.lst" -XX:SharedArchiveFile="$here/weltwright.jsa" \
    -cp "$here/weltwright.jar" >/dev/null
