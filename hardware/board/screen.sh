#!/bin/sh
# The board's own screen: one browser on one page, with a profile that is new at each start.
set -eu
address="http://127.0.0.1:${BYRESIDE_PORT:-4180}/"
profile="${XDG_RUNTIME_DIR:-/tmp}/byreside-screen"
rm -rf "$profile"
mkdir -p "$profile"

# An error page of the browser would stay on the screen: wait until there is something to show.
until curl --silent --fail --max-time 2 --output /dev/null "${address}api/health"; do sleep 0.5; done

browser="$(command -v chromium || command -v chromium-browser)"
# -d: no decorations, -s: a keyboard may switch to a terminal for whoever repairs the board.
exec cage -d -s -- "$browser" \
	--kiosk "$address" \
	--ozone-platform=wayland \
	--user-data-dir="$profile" \
	--disk-cache-dir="$profile/cache" \
	--no-first-run \
	--noerrdialogs \
	--disable-infobars \
	--disable-session-crashed-bubble \
	--disable-component-update \
	--disable-pinch \
	--disable-features=OverscrollHistoryNavigation \
	--password-store=basic \
	--kiosk-printing \
	--autoplay-policy=no-user-gesture-required \
	--use-fake-ui-for-media-stream
