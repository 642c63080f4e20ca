#!/bin/sh
# Starts Weltwright on macOS, by double click too; passes on whatever it is given.
# Java is the system's choice of version 17 or newer, unless JAVA_HOME names one.

if [ -z "$JAVA_HOME" ]; then
    JAVA_HOME=$(/usr/libexec/java_home -v 17+ 2>/dev/null)
    export JAVA_HOME
fi
exec sh "$(cd "$(dirname "$0")" && pwd)/weltwright.sh" "$@"
