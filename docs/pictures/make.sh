#!/usr/bin/env bash
# Makes the README's pictures anew from the program as it stands: the demo shop in a folder of its own, looked at by a Chromium.
#   docs/pictures/make.sh          needs a Chromium (Debian: apt install chromium), or its path in CHROMIUM
set -eu
here="$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)"
port="${PORT:-5399}"
largest=250000
for name in "${CHROMIUM:-}" chromium chromium-browser google-chrome; do
  if [ -n "$name" ] && browser="$(command -v "$name")"; then break; fi
done
[ -n "${browser:-}" ] || { echo "No Chromium was found. Install it, or name its program in the variable CHROMIUM." >&2; exit 4; }

data="$(mktemp -d)"
workbench=
trap '[ -z "$workbench" ] || kill "$workbench" 2>/dev/null || true; wait; rm -rf "$data"' EXIT
address="http://127.0.0.1:$port"
if curl -s -o "$data/other" "$address/"; then echo "Something answers at $address already. Choose another: PORT=5400 $0" >&2; exit 3; fi
# Built by the start script, then started as itself: what is stopped at the end is the workbench.
"$here/../../portwright" demo --no-serve --no-engine --data "$data/record" >"$data/said"
dotnet "$here/../../src/Portwright.Cli/bin/Release/net10.0/portwright.dll" serve --data "$data/record" --port "$port" >>"$data/said" 2>&1 &
workbench=$!
for _ in $(seq 120); do curl -s -f -o "$data/jobs" "$address/" && break; sleep 0.5; done
[ -s "$data/jobs" ] || { echo "The workbench did not answer at $address:" >&2; cat "$data/said" >&2; exit 4; }

# The first link on a page whose words or label say what is looked for. Pages leave out line ends, so a link is put on a line of its own.
link() { sed 's/<a /\n<a /g' "$1" | grep -F "$3" | grep -o "href=\"$2/[0-9a-f-]*\"" | head -1 | cut -d'"' -f2; }

picture() {
  [ -n "$2" ] || { echo "The demo's pages have no link for $1.png." >&2; exit 4; }
  "$browser" --headless --no-sandbox --disable-gpu --disable-background-networking --no-first-run --hide-scrollbars --user-data-dir="$data/browser" \
    --window-size="$3" --timeout=8000 --screenshot="$here/$1.png" "$address$2" >"$data/said" 2>&1 || { cat "$data/said" >&2; exit 4; }
  bytes=$(wc -c <"$here/$1.png")
  [ "$bytes" -lt "$largest" ] || { echo "$1.png has $bytes bytes, more than $largest." >&2; exit 1; }
  echo "$here/$1.png, $bytes bytes"
}

sheet="$(link "$data/jobs" /port 'intake 2, head B')"
picture port-sheet "$sheet" 1280,1080
curl -s "$address$sheet" >"$data/sheet"
# The sheet links its sweeps oldest first.
picture bench "$(grep -o '/sweep/[0-9a-f-]*' "$data/sheet" | tail -1)" 1280,900
