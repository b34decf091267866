# shellcheck shell=bash disable=SC2034
# What install.sh, roll-back.sh and uninstall.sh have in common; read by them, never run.

readonly HOME_FOLDER=/opt/byreside
readonly RELEASES=$HOME_FOLDER/releases
readonly CURRENT=$HOME_FOLDER/current
readonly PREVIOUS=$HOME_FOLDER/previous
readonly NODES=$HOME_FOLDER/nodes
readonly DATA=/var/lib/byreside
readonly SETTINGS=/etc/byreside.conf
# How long a started kiosk may take to answer before its release is given up.
readonly HEALTHY_WITHIN_S=${BYRESIDE_HEALTHY_WITHIN_S:-90}

say() { printf '%s\n' "$*"; }

stop_with() {
	printf '%s\n' "$*" >&2
	exit 1
}

need_root() { [ "$(id -u)" -eq 0 ] || stop_with "This changes the system: run it as root, with sudo."; }

# Whether systemd runs here; in an image that is being built it does not, and nothing is started.
is_running_systemd() { [ -d /run/systemd/system ]; }

port() {
	local set_to=''
	if [ -r "$SETTINGS" ]; then set_to=$(sed -n 's/^BYRESIDE_PORT=//p' "$SETTINGS"); fi
	printf '%s' "${set_to:-4180}"
}

is_healthy() {
	curl --silent --fail --max-time 2 --output /dev/null "http://127.0.0.1:$(port)/api/health"
}

wait_until_healthy() {
	local ends=$((SECONDS + HEALTHY_WITHIN_S))
	until is_healthy; do
		[ "$SECONDS" -lt "$ends" ] || return 1
		sleep 1
	done
}

# Points a link at a folder in one step: at no moment is there none.
point() {
	local link=$1 target=$2
	ln -sfn "$target" "$link.next"
	mv -T "$link.next" "$link"
}

# Copies a file where it differs, and then says so in files_changed.
files_changed=no
put() {
	local from=$1 to=$2
	if cmp --silent "$from" "$to"; then return 0; fi
	install -D -m 0644 "$from" "$to"
	files_changed=yes
}
