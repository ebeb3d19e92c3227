@echo off
rem Builds everything and runs every test. Set CHROMIUM to the path of a Chromium for the browser tests.
rem   test NAME   runs only the test projects whose name holds NAME
setlocal
cd /d "%~dp0"
set DOTNET_CLI_TELEMETRY_OPTOUT=1
set DOTNET_NOLOGO=1
dotnet build Portwright.slnx -c Release -v quiet -clp:NoSummary || exit /b 1
set ran=
set bad=
for /d %%d in ("tests\*%~1*") do call :run "%%d"
if not defined ran (
  echo No test project holds "%~1" in its name. 1>&2
  exit /b 2
)
if defined bad (
  echo Something failed, see above.
  exit /b 1
)
echo All passed.
exit /b 0

:run
rem The others are programs the tests start.
if /i not "%~x1"==".Tests" if /i not "%~x1"==".Reference" exit /b 0
set ran=1
echo == %~nx1
dotnet "%~1\bin\Release\net10.0\%~nx1.dll" --progress off --no-ansi || set bad=1
exit /b 0
