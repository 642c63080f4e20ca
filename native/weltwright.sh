#!/bin/sh
# Starts Weltwright on Linux, and for weltwright.command on macOS; passes on whatever it is given.
# Java is taken from JAVA_HOME, or else from the PATH.

here=$(cd "$(dirname "$(readlink -f "$0" 2>/dev/null || echo "$0")")" && pwd)
jar=$here/../target/weltwright.jar

if [ -n "$JAVA_HOME" ] && [ -x "$JAVA_HOME/bin/java" ]; then
    java=$JAVA_HOME/bin/java
else
    java=java
fi

# The first number of: openjdk version "17.0.15" 2025-04-15. Java 8 says 1.8, and so counts as 1.
version=$("$java" -version 2>&1 | sed -n 's/.* version "\([0-9]*\).*/\1/p' | head -n 1)

if [ -z "$version" ] || [ "$version" -lt 17 ]; then
    if [ -z "$version" ]; then
        echo "Weltwright needs Java 17 or newer, and finds none." >&2
    else
        echo "Weltwright needs Java 17 or newer, and this one is older: $("$java" -version 2>&1 | head -n 1)" >&2
    fi
    case $(uname) in
        Darwin) echo "Install a JDK 17 or newer for macOS, then start Weltwright again." >&2 ;;
        *) echo "Install it, for instance with: sudo apt install openjdk-17-jdk" >&2 ;;
    esac
    exit 1
fi

if [ ! -f "$jar" ]; then
    echo "Weltwright is not built yet. Build it in $(dirname "$here") with: mvn package" >&2
    exit 1
fi

# With the locale C or POSIX, Java cannot read file names and words outside English.
if [ "$(locale charmap 2>/dev/null)" = ANSI_X3.4-1968 ]; then
    LC_ALL=C.UTF-8
    export LC_ALL
fi

# From Java 23 on, the way that OpenCV's bindings reach their memory is warned about on the screen unless it is allowed.
quiet=
if [ "$version" -ge 23 ]; then
    quiet=--sun-misc-unsafe-memory-access=allow
fi

# What OpenCV logs of a damaged picture is said again by the program, in plain words.
export OPENCV_LOG_LEVEL=SILENT

# JavaCPP looks along java.library.path for parts of OpenCV that are not in its jars, and none of them is needed.

# An archive of classes with which the window opens faster. Java writes it when the window is closed; it comes beside the
# jar, where one may write, when it is complete, for one that is cut off can make Java crash. One of another build or of
# another Java is not used: the name says which Java, and Java leaves aside what does not fit, without a word if its log
# is off.
release=$("$java" -version 2>&1 | sed -n 's/.* version "\([^"]*\)".*/\1/p' | head -n 1)
archive=${jar%.jar}-$release.jsa
unfinished=
if [ -n "$(find "$archive" -newer "$jar" 2>/dev/null)" ]; then
    classes=-XX:SharedArchiveFile=$archive
elif [ $# -eq 0 ] && [ -w "${jar%/*}" ]; then
    unfinished=$archive.$$
    classes=-XX:ArchiveClassesAtExit=$unfinished
else
    classes=-Xshare:auto
fi

set -- "@$here/java.options" "$classes" -Xlog:disable $quiet -Djava.library.path= -jar "$jar" "$@"
if [ -z "$unfinished" ]; then
    exec "$java" "$@"
fi
"$java" "$@"
status=$?
if [ $status -eq 0 ] && [ -f "$unfinished" ]; then
    mv -f "$unfinished" "$archive"
else
    rm -f "$unfinished"
fi
exit $status
