#!/bin/sh
# Installs Debian packages that are missing; where that is not allowed, says the exact line to run.
set -u
say_only=no
[ "${1:-}" = "--only-say" ] && { say_only=yes; shift; }
line="apt-get install -y --no-install-recommends $*"
if [ "$say_only" = no ] && [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null; then
    echo "installing what is missing: $*"
    apt-get update -q && DEBIAN_FRONTEND=noninteractive $line && exit 0
elif [ "$say_only" = no ] && command -v sudo >/dev/null && command -v apt-get >/dev/null && sudo -n true 2>/dev/null; then
    echo "installing what is missing: $*"
    sudo apt-get update -q && sudo DEBIAN_FRONTEND=noninteractive $line && exit 0
fi
echo "Packages are missing. Please run:"
echo "  sudo $line"
exit 2
