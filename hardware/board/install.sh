#!/bin/bash
# Installs the kiosk on a board, or puts this release in the place of the one that is there.
# Running it again changes nothing that is as it should be. See README.md beside it.
set -euo pipefail

HERE=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
TREE=$(cd "$HERE/../.." && pwd)
# shellcheck source-path=SCRIPTDIR source=common.sh
. "$HERE/common.sh"

readonly KEPT=$DATA/before-update
with_screen=yes
node_archive=''
node_folder=''

usage() {
	cat <<-END
		usage: install.sh [--no-screen] [--node ARCHIVE]
		  --no-screen     no browser on this board: its screen is a tablet or a phone
		  --node ARCHIVE  use the Node in this archive (node-v…-linux-….tar.xz or .tar.gz)
	END
}

while [ $# -gt 0 ]; do
	case $1 in
	--no-screen) with_screen=no ;;
	--node)
		[ $# -ge 2 ] || stop_with "--node wants the archive's file."
		node_archive=$2
		shift
		;;
	--help)
		usage
		exit 0
		;;
	*)
		usage >&2
		exit 2
		;;
	esac
	shift
done

check_system() {
	need_root
	command -v apt-get >/dev/null || stop_with "This installer is for Debian 12 and 13 and their relatives: there is no apt-get here."
	local architecture
	architecture=$(dpkg --print-architecture)
	case $architecture in
	arm64 | amd64) ;;
	*) stop_with "This board is $architecture; the kiosk runs on arm64 and amd64. A 64-bit image of the same board helps." ;;
	esac
	local version
	version=$(. /etc/os-release && printf '%s' "${VERSION_ID:-unknown}")
	case $version in
	12 | 13) ;;
	*) say "Note: this was written for Debian 12 and 13, and this is $version." ;;
	esac
}

install_packages() {
	local names=(ca-certificates curl python3 make g++ gcc pkg-config socat espeak-ng alsa-utils)
	names+=(libpocketsphinx-dev pocketsphinx-en-us openssl xz-utils)
	if [ "$with_screen" = yes ]; then names+=(cage chromium libpam-systemd fonts-liberation); fi
	local missing=() name
	for name in "${names[@]}"; do
		dpkg-query --show --showformat='${Status}' "$name" 2>/dev/null | grep -q 'ok installed' || missing+=("$name")
	done
	[ ${#missing[@]} -gt 0 ] || return 0
	say "Installing ${missing[*]} …"
	export DEBIAN_FRONTEND=noninteractive
	apt-get update -qq
	for name in "${missing[@]}"; do
		# The ear is left out of some releases of Debian: the kiosk works without it, and says so.
		if ! apt-get install -y -qq --no-install-recommends "$name" >/dev/null; then
			case $name in
			*pocketsphinx*) say "Not to be had here: $name. The kiosk will not listen; all else works." ;;
			*) stop_with "$name could not be installed: see what apt-get says above." ;;
			esac
		fi
	done
}

is_new_enough() {
	"$1" -e 'const [a, b] = process.versions.node.split(".").map(Number); process.exit(a > 20 || (a === 20 && b >= 19) ? 0 : 1)' 2>/dev/null
}

version_of() { "$1" -p process.version; }

# Sets node_folder: a Node of the release's own, so that neither an update of the system nor of the kiosk takes it away.
choose_node() {
	if [ -n "$node_archive" ]; then
		[ -r "$node_archive" ] || stop_with "$node_archive cannot be read."
		rm -rf "$NODES/next"
		mkdir -p "$NODES/next"
		tar -xf "$node_archive" -C "$NODES/next" --strip-components=1 --no-same-owner
		is_new_enough "$NODES/next/bin/node" ||
			stop_with "The Node in $node_archive does not run here, or is older than 20.19."
		node_folder=$NODES/$(version_of "$NODES/next/bin/node")
		if [ -e "$node_folder" ]; then rm -rf "$NODES/next"; else mv -T "$NODES/next" "$node_folder"; fi
		return 0
	fi
	if is_new_enough "$CURRENT/.node/bin/node"; then
		node_folder=$(readlink -f "$CURRENT/.node")
		return 0
	fi
	local found
	found=$(command -v node || true)
	if [ -z "$found" ] && apt-get install -y -qq --no-install-recommends nodejs npm >/dev/null 2>&1; then
		found=$(command -v node || true)
	fi
	if [ -z "$found" ] || ! is_new_enough "$found"; then
		stop_with "Node 20.19 or newer is needed, and this system has ${found:+$("$found" --version)}${found:-none}.
Debian 12's own is older. Take the long-term-support archive for this board (linux-arm64 or linux-x64) from
the Node project's download page, check its SHA-256 against the list beside it, and run
  $0 --node node-v….tar.xz"
	fi
	command -v npm >/dev/null || stop_with "There is no npm beside Node: apt-get install npm, or use --node."
	node_folder=$NODES/system-$(version_of "$found")
	mkdir -p "$node_folder/bin"
	ln -sfn "$(readlink -f "$found")" "$node_folder/bin/node"
	ln -sfn "$(readlink -f "$(command -v npm)")" "$node_folder/bin/npm"
}

make_users() {
	getent group byreside >/dev/null || groupadd --system byreside
	id byreside >/dev/null 2>&1 ||
		useradd --system --gid byreside --home-dir "$DATA" --no-create-home --shell /usr/sbin/nologin byreside
	if [ "$with_screen" = yes ]; then
		id byreside-screen >/dev/null 2>&1 ||
			useradd --system --user-group --home-dir /nonexistent --no-create-home --shell /usr/sbin/nologin byreside-screen
	fi
	install -d -o byreside -g byreside -m 0750 "$DATA"
	if [ ! -e "$SETTINGS" ]; then
		install -m 0644 /dev/null "$SETTINGS"
		printf '%s\n' '# Settings of the barn kiosk, such as BYRESIDE_PORT=4180. Then: systemctl restart byreside' >"$SETTINGS"
	fi
}

# The sources of this release, without what is made from them or belongs to one machine.
sources() { tar -C "$TREE" --exclude=./node_modules --exclude=./dist --exclude=./data --exclude=./.git -cf - "$@" .; }

# A release is named by what is in it and by its Node, so that the same one is built once.
name_release() {
	local print
	print=$(sources --sort=name --owner=0 --group=0 --numeric-owner --mtime=@0 --mode=go=rX | sha256sum | cut -c1-12)
	printf '%s-%s' "$print" "$(basename "$node_folder")"
}

# Built by the kiosk's own user, and then out of its reach: what serves cannot change itself.
build_release() {
	local folder=$1
	if [ -e "$folder/.built" ]; then return 0; fi
	say "Building release $(basename "$folder"); on a small board this takes some minutes …"
	rm -rf "$folder"
	mkdir -p "$folder"
	sources | tar -xf - -C "$folder" --no-same-owner
	chown -R byreside:byreside "$folder"
	local steps='node server/launch/build.mjs
		node -e "import(\"./server/launch/ear.mjs\").then((ear) => ear.ensureEar())"
		npm prune --omit=dev --no-audit --no-fund'
	local surroundings=(HOME="$folder/.build-home" PATH="$node_folder/bin:$PATH")
	# An archive brings what the database module is compiled against: nothing more is fetched then.
	if [ -e "$node_folder/include/node/node.h" ]; then surroundings+=(npm_config_nodedir="$node_folder"); fi
	(
		cd "$folder"
		runuser -u byreside -- env "${surroundings[@]}" bash -ec "$steps"
	)
	rm -rf "$folder/.build-home"
	ln -sfn "$node_folder" "$folder/.node"
	chown -hR root:root "$folder"
	chmod -R u=rwX,go=rX "$folder"
	touch "$folder/.built"
}

install_files() {
	put "$HERE/byreside.service" /etc/systemd/system/byreside.service
	if [ "$with_screen" = yes ]; then
		put "$HERE/byreside-screen.service" /etc/systemd/system/byreside-screen.service
	fi
	put "$HERE/journal.conf" /etc/systemd/journald.conf.d/byreside.conf
	put "$HERE/99-byreside-sticks.rules" /etc/udev/rules.d/99-byreside-sticks.rules
	# Its sockets are this board's own: what was written there stays.
	if [ ! -e /etc/udev/rules.d/99-byreside.rules ]; then
		put "$HERE/99-byreside.rules" /etc/udev/rules.d/99-byreside.rules
	fi
	if [ "$files_changed" = yes ] && is_running_systemd; then
		systemctl daemon-reload
		udevadm control --reload
		udevadm trigger --subsystem-match=tty
		systemctl try-restart systemd-journald
	fi
	systemctl --quiet enable byreside.service
	if [ "$with_screen" = yes ]; then
		systemctl --quiet enable byreside-screen.service
		systemctl --quiet set-default graphical.target
	fi
}

# The records as a stopped kiosk left them: a new release may change the form of the file, and there is no way back in it.
keep_records() {
	rm -rf "$KEPT"
	install -d -o byreside -g byreside -m 0750 "$KEPT" &&
		find "$DATA" -maxdepth 1 -type f -exec cp --preserve=all --reflink=auto -t "$KEPT" {} + &&
		sync --file-system "$KEPT"
}

put_records_back() {
	local aside=$DATA/failed-update
	rm -rf "$aside"
	install -d -o byreside -g byreside -m 0750 "$aside"
	find "$DATA" -maxdepth 1 -type f -exec mv -t "$aside" {} +
	find "$KEPT" -maxdepth 1 -type f -exec cp --preserve=all --reflink=auto -t "$DATA" {} +
}

# Puts a release to use; one that does not answer is taken back, with the records as they were before it.
switch_to() {
	local folder=$1 before=''
	if [ -e "$CURRENT" ]; then before=$(readlink -f "$CURRENT"); fi
	if [ "$before" = "$folder" ]; then
		say "This release is in use already."
		if is_running_systemd; then systemctl start --no-block byreside.service; fi
		return 0
	fi
	if ! is_running_systemd; then
		point "$CURRENT" "$folder"
		say "Installed. It starts with the board."
		return 0
	fi
	systemctl stop byreside.service
	if ! keep_records; then
		rm -rf "$KEPT"
		systemctl start --no-block byreside.service
		stop_with "The records could not be copied before the update, so it was not made. Is there room? df -h $DATA"
	fi
	point "$CURRENT" "$folder"
	systemctl start --no-block byreside.service
	if wait_until_healthy; then
		if [ -n "$before" ]; then point "$PREVIOUS" "$before"; fi
		if [ "$with_screen" = yes ]; then systemctl restart --no-block byreside-screen.service; fi
		say "Release $(basename "$folder") is in use: http://127.0.0.1:$(port)/"
		return 0
	fi
	[ -n "$before" ] || stop_with "The kiosk was installed but does not answer: journalctl -u byreside says why."
	systemctl stop byreside.service
	put_records_back
	point "$CURRENT" "$before"
	systemctl start --no-block byreside.service
	stop_with "The new release did not answer within $HEALTHY_WITHIN_S s: the one before is in use again, with its records. journalctl -u byreside says why."
}

is_in_use() {
	local what=$1 link
	for link in "$CURRENT" "$PREVIOUS"; do
		[ -e "$link" ] || continue
		case $what in "$(readlink -f "$link")" | "$(readlink -f "$link/.node")") return 0 ;; esac
	done
	return 1
}

# The release in use and the one before it stay, with their Nodes; older ones only fill the card.
drop_what_is_old() {
	local folder
	for folder in "$RELEASES"/* "$NODES"/*; do
		is_in_use "$folder" || rm -rf "$folder"
	done
}

check_system
install_packages
choose_node
make_users
release=$RELEASES/$(name_release)
build_release "$release"
install_files
switch_to "$release"
drop_what_is_old
