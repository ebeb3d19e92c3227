@echo off
rem Runs Portwright. Builds it first where a source is newer than the last build; needs nothing but the .NET 10 SDK.
rem   portwright publish [--out DIR]   makes program folders for Windows and Linux that need no SDK
setlocal
set "here=%~dp0"
set DOTNET_CLI_TELEMETRY_OPTOUT=1
set DOTNET_NOLOGO=1
set "project=%here%src\Portwright.Cli\Portwright.Cli.csproj"
set "program=%here%src\Portwright.Cli\bin\Release\net10.0\portwright.dll"
set "stamp=%here%src\Portwright.Cli\bin\Release\net10.0\.built"
where dotnet >nul 2>nul || (
  echo Portwright needs the .NET 10 SDK to build itself. Install it from https://dotnet.microsoft.com/download and try again. 1>&2
  exit /b 4
)
if /i "%~1"=="publish" goto publish

rem PowerShell compares times; it ends with 1 where something is newer than the stamp.
powershell -NoProfile -ExecutionPolicy Bypass -Command "$s='%stamp%'; if (!(Test-Path -LiteralPath $s) -or !(Test-Path -LiteralPath '%program%')) { exit 1 }; $t=(Get-Item -LiteralPath $s).LastWriteTimeUtc; $n=Get-ChildItem -LiteralPath '%here%src','%here%demo' -Recurse -File | Where-Object { $_.FullName -notmatch '\\(bin|obj)\\' -and $_.LastWriteTimeUtc -gt $t } | Select-Object -First 1; if ($n) { exit 1 }"
if errorlevel 1 (
  echo building Portwright 1>&2
  dotnet build "%project%" -c Release -v quiet -clp:ErrorsOnly 1>&2 || exit /b 4
  type nul > "%stamp%"
)
dotnet "%program%" %*
exit /b %errorlevel%

:publish
if not "%~2"=="" if /i not "%~2"=="--out" (
  echo portwright publish knows no "%~2". Example: portwright publish --out DIR 1>&2
  exit /b 2
)
if /i "%~2"=="--out" if "%~3"=="" (
  echo --out needs a folder. 1>&2
  exit /b 2
)
set "out=%here%artifacts"
if /i "%~2"=="--out" set "out=%~f3"
for %%s in (linux-x64 win-x64) do (
  if exist "%out%\portwright-%%s" rmdir /s /q "%out%\portwright-%%s"
  dotnet publish "%project%" -c Release -r %%s --self-contained -p:PublishReadyToRun=true -p:DebugType=none -p:RunAnalyzers=false -p:EnforceCodeStyleInBuild=false -v quiet -clp:NoSummary -o "%out%\portwright-%%s" || exit /b 4
  del /q "%out%\portwright-%%s\*.pdb" "%out%\portwright-%%s\*.xml" "%out%\portwright-%%s\web.config" "%out%\portwright-%%s\aspnetcorev2_inprocess.dll" 2>nul
  echo %out%\portwright-%%s
)
exit /b 0
