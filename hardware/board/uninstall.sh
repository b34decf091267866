#!/bin/bash
# Takes the kiosk off a board. Records stay in /var/lib/byreside unless --with-records is said.
set -euo pipefail

HERE=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
# shellcheck source-path=SCRIPTDIR source=common.sh
. "$HERE/common.sh"

with_records=no
case ${1:-} in
'') ;;
--with-records) with_records=yes ;;
*)
	say "usage: uninstall.sh [--with-records]" >&2
	exit 2
	;;
esac

need_root
for unit in byreside-screen.service byreside.service; do
	[ -e "/etc/systemd/system/$unit" ] || continue
	if is_running_systemd; then systemctl stop "$unit"; fi
	systemctl --quiet disable "$unit"
	rm -f "/etc/systemd/system/$unit"
done
rm -f /etc/systemd/journald.conf.d/byreside.conf /etc/udev/rules.d/99-byreside.rules /etc/udev/rules.d/99-byreside-sticks.rules
if is_running_systemd; then
	systemctl daemon-reload
	udevadm control --reload
fi
rm -rf "$HOME_FOLDER"
if [ "$with_records" = yes ]; then
	rm -rf "$DATA" "$SETTINGS"
	say "The kiosk and its records are gone."
else
	say "The kiosk is gone. Its records are in $DATA, its settings in $SETTINGS."
fi
for user in byreside-screen byreside; do
	if [ "$user" = byreside ] && [ "$with_records" = no ]; then continue; fi
	if id "$user" >/dev/null 2>&1; then userdel "$user"; fi
	if getent group "$user" >/dev/null; then groupdel "$user"; fi
done
