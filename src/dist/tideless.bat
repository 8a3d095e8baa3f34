@echo off
rem Starts Tideless. Needs Java 17 or newer: the one in JAVA_HOME, or the first on the PATH.
setlocal
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
where /q "%JAVA%" 2>nul || if not exist "%JAVA%.exe" (
    echo tideless: no Java found; install Java 17 or newer, or set JAVA_HOME 1>&2
    exit /b 1
)
"%JAVA%" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC -Xshare:auto -jar "%~dp0tideless.jar" %*
exit /b %ERRORLEVEL%
