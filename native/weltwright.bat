@echo off
rem Starts Weltwright on Windows, by double click too; passes on whatever it is given.
rem Java is taken from JAVA_HOME, or else from the PATH.
setlocal

set "JAR=%~dp0..\target\weltwright.jar"
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java"

rem The third word of: openjdk version "17.0.15" 2025-04-15; then what stands before its first dot.
rem Java 8 says 1.8, and so counts as 1.
set "VERSION="
for /f "tokens=3" %%v in ('call "%JAVA%" -version 2^>^&1 ^| findstr /i /c:" version "') do set "VERSION=%%~v"
set "MAJOR=0"
for /f "delims=.-+" %%m in ("%VERSION%") do set "MAJOR=%%m"

if not defined VERSION (
    >&2 echo Weltwright needs Java 17 or newer, and finds none.
    goto :install
)
if %MAJOR% LSS 17 (
    >&2 echo Weltwright needs Java 17 or newer, and this one is older: %VERSION%
    goto :install
)
if not exist "%JAR%" (
    >&2 echo Weltwright is not built yet. Build it in the folder above this one with: mvn package
    goto :stop
)

rem From Java 23 on, the way that OpenCV's bindings reach their memory is warned about on the screen unless it is allowed.
set "QUIET="
if %MAJOR% GEQ 23 set "QUIET=--sun-misc-unsafe-memory-access=allow"

rem What OpenCV logs of a damaged picture is said again by the program, in plain words.
set "OPENCV_LOG_LEVEL=SILENT"

rem JavaCPP looks along java.library.path, which here includes the current folder, for parts of OpenCV that are not in
rem its jars; none of them is needed, so the path is empty.

rem An archive of classes with which the window opens faster. Java writes it beside the jar when a window is closed, where
rem there is none of this Java and this build. Java leaves an archive aside that does not fit, and would say so.
set "ARCHIVE=%~dp0..\target\weltwright-%VERSION%.jsa"
set "CLASSES=-Xshare:auto"
set "NEWEST="
for /f "delims=" %%n in ('dir /b /o:d "%JAR%" "%ARCHIVE%" 2^>nul') do set "NEWEST=%%n"
if "%NEWEST%"=="weltwright-%VERSION%.jsa" (
    set "CLASSES=-XX:SharedArchiveFile=%ARCHIVE%"
) else if "%~1"=="" (
    set "CLASSES=-XX:ArchiveClassesAtExit=%ARCHIVE%"
)

if "%~1"=="" (
    start "Weltwright" "%JAVA%w" "@%~dp0java.options" "%CLASSES%" -Xlog:disable %QUIET% -Djava.library.path= -jar "%JAR%"
    exit /b 0
)
"%JAVA%" "@%~dp0java.options" "%CLASSES%" -Xlog:disable %QUIET% -Djava.library.path= -jar "%JAR%" %*
exit /b %ERRORLEVEL%

:install
>&2 echo Install a JDK 17 or newer for x86-64, on Windows on ARM too, then start Weltwright again.
:stop
rem A double click would close the window before it can be read.
if "%~1"=="" pause
exit /b 1
