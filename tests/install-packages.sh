#!/bin/sh
# Installs the Debian packages that building and testing need and that are missing; where that is not allowed, says the
# exact line to run (exit status 2). With --only-say nothing is installed.
set -u
needed="build-essential pkg-config libtree-sitter-dev libpcre2-dev libyaml-dev libjansson-dev libgit2-dev libcmocka-dev lilypond python3 git"

missing=""
for package in $needed; do
    [ "$(dpkg-query -W -f '${Status}' "$package" 2>/dev/null)" = "install ok installed" ] || missing="$missing $package"
done
[ -z "$missing" ] && exit 0

install="apt-get install -y --no-install-recommends$missing"
if [ "${1:-}" != --only-say ] && command -v apt-get >/dev/null; then
    if [ "$(id -u)" = 0 ]; then
        root="env"
    elif command -v sudo >/dev/null && sudo -n true 2>/dev/null; then
        root="sudo -n env"
    else
        root=""
    fi
    if [ -n "$root" ]; then
        echo "installing what is missing:$missing"
        $root apt-get update -q && $root DEBIAN_FRONTEND=noninteractive $install && exit 0
        echo "The packages could not be installed."
    fi
fi
if command -v sudo >/dev/null; then
    echo "Packages are missing. Please run:"
    echo "  sudo apt-get update && sudo $install"
else
    echo "Packages are missing. Please run as root:"
    echo "  apt-get update && $install"
fi
exit 2
