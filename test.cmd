@echo off
rem Builds everything and runs every test. Set CHROMIUM to the path of a Chromium for the browser tests.
setlocal enabledelayedexpansion
cd /d "%~dp0"
dotnet build Portwright.slnx -c Release -v quiet || exit /b 1
set bad=0
for /d %%d in (tests\*.Tests tests\*.Reference) do (
  dotnet "%%d\bin\Release\net10.0\%%~nxd.dll" --progress off || set bad=1
)
if !bad! neq 0 (echo Something failed, see above.) else (echo All passed.)
exit /b !bad!
