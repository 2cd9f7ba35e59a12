@echo off
rem Starts Thumbseal with the Java of JAVA_HOME, else the one on the path. It has to be 17 or newer.
rem JAVA_OPTS go to Java behind our own, so that they win: set JAVA_OPTS=-Xmx1g
setlocal
set "THUMBSEAL_JAVA=java"
if not defined JAVA_HOME goto run
set "THUMBSEAL_JAVA=%JAVA_HOME%\bin\java"
if exist "%THUMBSEAL_JAVA%.exe" goto run
echo thumbseal: JAVA_HOME is "%JAVA_HOME%", where there is no bin\java.exe; correct it or unset it 1>&2
exit /b 3
:run
"%THUMBSEAL_JAVA%" -Xmx256m %JAVA_OPTS% -jar "%~dp0thumbseal.jar" %*
if %ERRORLEVEL% equ 9009 (
  echo thumbseal: no Java found; install a Java runtime of version 17 or newer, or set JAVA_HOME 1>&2
  exit /b 3
)
exit /b %ERRORLEVEL%
