@echo off
rem Starts Bookholder. BOOKHOLDER_JAVA_OPTS holds further options for the Java virtual machine.
setlocal
for %%i in ("%~dp0..") do set "home=%%~fi"

if defined JAVA_HOME goto given
set "java=java"
where java >nul 2>nul && goto check
echo bookholder: Java is not installed. Install Java 17 or newer, or set JAVA_HOME to its folder. 1>&2
exit /b 2

:given
set "java=%JAVA_HOME%\bin\java.exe"
if exist "%java%" goto check
echo bookholder: JAVA_HOME is set to "%JAVA_HOME%", which has no bin\java.exe. Set it to a Java 17 folder or unset it. 1>&2
exit /b 2

:check
rem "17.0.15" gives 17, the old form "1.8.0_402" gives 1.
set "version="
for /f "tokens=3" %%v in ('^""%java%" -version 2^>^&1 ^| findstr /c:" version "^"') do if not defined version set "version=%%~v"
set "major=17"
if defined version for /f "delims=.-+" %%m in ("%version%") do set "major=%%m"
rem From Java 25 on the window library does without the old way to memory, of which Java would warn.
set "newer="
if %major% geq 25 set "newer=-Dorg.lwjgl.system.memoryBackend=ffm"
if %major% geq 17 goto start
echo bookholder: the Java at "%java%" is too old. Install Java 17 or newer, or set JAVA_HOME to its folder. 1>&2
exit /b 2

:start
"%java%" @program.options@ %newer% %BOOKHOLDER_JAVA_OPTS% "-Dbookholder.home=%home%" -cp "%home%\lib\*" @program.main@ %*
exit /b %errorlevel%
