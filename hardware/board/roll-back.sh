#!/bin/bash
# Goes back to the release that was in use before this one. The records stay as they are: nothing logged since is lost.
set -euo pipefail

HERE=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
# shellcheck source-path=SCRIPTDIR source=common.sh
. "$HERE/common.sh"

need_root
[ -e "$PREVIOUS" ] || stop_with "There is no release before this one on the board."
now=$(readlink -f "$CURRENT")
before=$(readlink -f "$PREVIOUS")
point "$CURRENT" "$before"
point "$PREVIOUS" "$now"
is_running_systemd || {
	say "Release $(basename "$before") starts with the board."
	exit 0
}
systemctl restart --no-block byreside.service
if wait_until_healthy; then
	say "Release $(basename "$before") is in use."
	exit 0
fi
point "$CURRENT" "$now"
point "$PREVIOUS" "$before"
systemctl restart --no-block byreside.service
stop_with "Release $(basename "$before") does not answer with these records, so the newer one is in use again.
The records as they were before the update are in $DATA/before-update: going back to them loses what was logged since."
