@echo off
rem Starts Tideless. Needs Java 17 or newer: the one in JAVA_HOME, or the first on the PATH.
setlocal
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME:"=%\bin\java"
where /q "%JAVA%" 2>nul || if not exist "%JAVA%.exe" (
    echo tideless: no Java found; install Java 17 or newer, or set JAVA_HOME 1>&2
    exit /b 1
)
rem From Java 19 on an archive of loaded classes is kept in the user's own folder and made anew when
rem it no longer fits; Java 17 and 18 know no such flag, pass over it and start without.
set "KEPT=%TEMP%\tideless"
if defined LOCALAPPDATA set "KEPT=%LOCALAPPDATA%\tideless"
if not exist "%KEPT%" mkdir "%KEPT%" 2>nul
"%JAVA%" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xshare:auto -Xlog:disable -Xlog:all=error:stderr -XX:+IgnoreUnrecognizedVMOptions -XX:+AutoCreateSharedArchive "-XX:SharedArchiveFile=%KEPT%\tideless.jsa" -jar "%~dp0tideless.jar" %*
exit /b %ERRORLEVEL%
