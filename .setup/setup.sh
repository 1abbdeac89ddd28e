#!/bin/sh
# Makes everything ready that `make site` or `make test` needs, and does nothing where it is ready:
#   sh .setup/setup.sh site|test
# System packages are installed only by root; anyone else is told the one command to run. Never calls sudo.
set -eu
cd "$(dirname "$0")/.."
purpose=$1

say() { printf '%s\n' "$*" >&2; }

suits() { # suits PYTHON [NEWEST]: is it there, 3.11 or newer, and no newer than NEWEST?
    command -v "$1" >/dev/null 2>&1 &&
        "$1" -c "import sys; sys.exit(not (3, 11) <= sys.version_info[:2] <= (3, ${2:-99}))" 2>/dev/null
}

find_python() {
    if [ -n "${PYTHON:-}" ]; then
        if suits "$PYTHON"; then echo "$PYTHON"; return; fi
        say "PYTHON=$PYTHON is not a Python 3.11 or newer."
        return 1
    fi
    # First the versions that requirements.txt was tried with.
    for candidate in python3 python3.13 python3.12 python3.11; do
        if suits "$candidate" 13; then echo "$candidate"; return; fi
    done
    for candidate in python3 python3.15 python3.14; do
        if suits "$candidate"; then echo "$candidate"; return; fi
    done
    say "Loopleaf needs Python 3.11 or newer. If you have one by another name: make site PYTHON=/path/to/python"
    return 1
}

# packages SYSTEM NEED...: what that system calls them.
packages() {
    system=$1
    shift
    for need in "$@"; do
        case "$system $need" in
            "debian venv") case ${python##*/} in python3) echo python3-venv ;; *) echo "python$version-venv" ;; esac ;;
            "debian pango") echo libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0 ;;
            "fedora venv") echo python3-libs ;;
            "fedora pango") echo pango harfbuzz ;;
            "macos venv") echo python ;;
            "macos pango") echo pango ;;
            *" chromium") echo chromium ;;
            "macos poppler") echo poppler ;;
            *" poppler") echo poppler-utils ;;
            "debian atomic") echo libatomic1 ;;
            "fedora atomic") echo libatomic ;;
        esac
    done | tr '\n' ' ' | sed 's/ $//'
}

tell_commands() {
    say "The $purpose still needs software from your system. Run the line for it, then the same make again:"
    say "  Debian, Ubuntu:  apt-get install $(packages debian "$@")"
    say "  Fedora:          dnf install $(packages fedora "$@")"
    say "  macOS:           brew install $(packages macos "$@")"
    say "(On Debian and Fedora as root. Nothing was changed.)"
}

install() { # install NEED...: by the system's package manager, as root.
    if command -v apt-get >/dev/null 2>&1; then
        say "Installing with apt-get: $(packages debian "$@")"
        apt-get update -q >&2 || say "apt-get update failed; trying with the list that is there."
        # shellcheck disable=SC2046 # one word a package
        DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends $(packages debian "$@") >&2
    elif command -v dnf >/dev/null 2>&1; then
        say "Installing with dnf: $(packages fedora "$@")"
        # shellcheck disable=SC2046
        dnf install -y -q $(packages fedora "$@") >&2
    else
        return 1
    fi
}

# Setting up empties .venv; through a link, that would be an environment that others use.
if [ -L .venv ]; then
    say ".venv is a link, and setting up would empty the environment that it points to. Nothing was changed."
    say "To give this folder an environment of its own, remove the link (rm .venv), then run the same make again."
    exit 1
fi

python=$(find_python)
version=$("$python" -c 'import sys; print("%d.%d" % sys.version_info[:2])')

needs=$("$python" .setup/needs.py "$purpose" | tr '\n' ' ')
if [ -n "$needs" ]; then
    # shellcheck disable=SC2086 # one word a need
    if [ "$(id -u)" != 0 ] || ! install $needs; then
        tell_commands $needs
        exit 1
    fi
    needs=$("$python" .setup/needs.py "$purpose" | tr '\n' ' ')
    if [ -n "$needs" ]; then
        say "The packages are installed, but these are still not found: $needs"
        exit 1
    fi
fi

# What is installed belongs to this lock, this Python and this folder: when one changes, it is done again.
place=$("$python" -c 'import sys; print(sys.version)'; pwd)
packaging=$(printf '%s\n' "$place"; cksum requirements.txt pyproject.toml)
ready=.venv/.ready
if [ "$(cat $ready 2>/dev/null)" != "$packaging" ] || ! .venv/bin/python -c '' 2>/dev/null; then
    say "Setting up Python's packages in .venv (once; a minute or two)"
    rm -f $ready
    if [ "$(cat .venv/.place 2>/dev/null)" != "$place" ] || ! .venv/bin/python -c '' 2>/dev/null; then
        "$python" -m venv --clear .venv
        printf '%s\n' "$place" >.venv/.place
    fi
    # The lock is whole, so nothing is looked for: older pips take a newer `coverage[toml]` than the one locked.
    .venv/bin/python -m pip install -q --disable-pip-version-check --no-deps --require-hashes \
        -r requirements.txt >&2
    .venv/bin/python -m pip install -q --disable-pip-version-check --no-build-isolation --no-deps -e . >&2
    .venv/bin/python -m pip check -q --disable-pip-version-check >&2
    printf '%s\n' "$packaging" >$ready
fi

# The test of the wheel installs from files put aside here, without a network.
wheelhouse=.cache/wheelhouse
lock=$(printf '%s\n' "$place"; cksum requirements.txt)
if [ "$purpose" = test ] && [ "$(cat $wheelhouse/.ready 2>/dev/null)" != "$lock" ]; then
    say "Putting packages aside in $wheelhouse (once)"
    rm -rf $wheelhouse
    mkdir -p $wheelhouse
    .venv/bin/python -m pip wheel -q --disable-pip-version-check --no-deps --require-hashes \
        -r requirements.txt --wheel-dir $wheelhouse >&2
    printf '%s\n' "$lock" >$wheelhouse/.ready
fi
