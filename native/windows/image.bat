@echo off
rem Makes an image of Weltwright for Windows that brings its own Java: target\image\Weltwright (a folder), and where the
rem WiX tools are installed an installer beside it, which opens jobs (.wwj) by a double click.
rem
rem   mvn -DskipTests package
rem   native\windows\image.bat
rem
rem Needs a JDK 17 for x86-64, in JAVA_HOME. OpenCV stays in its jar and is unpacked by the first start, as README says.
setlocal
cd /d "%~dp0..\.."
if not exist target\weltwright.jar (
    >&2 echo Build the program first: mvn -DskipTests package
    exit /b 1
)
set "OUT=target\image"
if exist "%OUT%" rmdir /s /q "%OUT%"
mkdir "%OUT%\input\lib" || exit /b 1
copy target\weltwright.jar "%OUT%\input" >nul || exit /b 1
copy target\bom.json "%OUT%\input" >nul || exit /b 1
copy LICENSE "%OUT%\input" >nul || exit /b 1
copy target\lib\*.jar "%OUT%\input\lib" >nul || exit /b 1

rem With the archive of Java's own classes; it does not depend on where the image is installed.
"%JAVA_HOME%\bin\jlink" --add-modules java.base,java.desktop,java.management,java.prefs,java.sql,jdk.localedata,jdk.unsupported,jdk.accessibility --include-locales=en,de ^
    --vm=server --compress=2 --strip-java-debug-attributes --no-header-files --no-man-pages --output "%OUT%\java" || exit /b 1
"%OUT%\java\bin\java" -Xshare:dump -XX:+UseSerialGC >nul || exit /b 1

set "OPTIONS="
for /f "usebackq eol=# delims=" %%o in ("native\java.options") do call set "OPTIONS=%%OPTIONS%% %%o"
set "COMMON=--app-version 0.1.0 --vendor Weltwright --icon native\icon\weltwright.ico"
"%JAVA_HOME%\bin\jpackage" --type app-image --name Weltwright %COMMON% --dest "%OUT%" ^
    --runtime-image "%OUT%\java" --input "%OUT%\input" --main-jar weltwright.jar ^
    --java-options "%OPTIONS%" || exit /b 1

(
    echo extension=wwj
    echo mime-type=application/x-weltwright-job
    echo description=Weltwright job
    echo icon=native/icon/weltwright.ico
) > "%OUT%\job.properties"
where candle >nul 2>nul || (
    echo WiX is not installed: the folder %OUT%\Weltwright is all that was made.
    exit /b 0
)
"%JAVA_HOME%\bin\jpackage" --type msi --name Weltwright --app-image "%OUT%\Weltwright" --app-version 0.1.0 ^
    --vendor Weltwright --dest "%OUT%" --file-associations "%OUT%\job.properties" --license-file LICENSE ^
    --win-menu --win-shortcut --win-dir-chooser --win-per-user-install
exit /b %ERRORLEVEL%
