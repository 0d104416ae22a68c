# What examples/run and tests/run share, to be sourced: packages, configuring, building, examples.
# Nothing here is done twice: packages only when missing, configuring only when an option changed.
# shellcheck shell=bash

root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/../.." && pwd)
out="$root/out"
jobs=$(nproc)

say() { printf '== %s\n' "$*"; }

# Runs a command quietly; what it said is shown only where it fails.
quietly() {
    mkdir -p "$out/build"
    local log="$out/build/last-command.log"
    if ! "$@" >"$log" 2>&1 </dev/null; then
        cat "$log" >&2
        printf 'failed: %s\n' "$*" >&2
        return 1
    fi
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    else
        sudo -- "$@"
    fi
}

# need_packages PACKAGE...: installs those that are missing.
need_packages() {
    local missing=() package
    for package in "$@"; do
        if [ "$(dpkg-query -W -f='${db:Status-Status}' "$package" 2>/dev/null)" != installed ]; then
            missing+=("$package")
        fi
    done
    [ ${#missing[@]} -eq 0 ] && return
    if [ "$(id -u)" -ne 0 ] && ! command -v sudo >/dev/null; then
        printf 'missing packages, and no right to install them: %s\n' "${missing[*]}" >&2
        return 1
    fi
    say "installing ${missing[*]}"
    quietly as_root apt-get update -qq
    quietly as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -qq --no-install-recommends "${missing[@]}"
}

program_packages=(g++ cmake ninja-build ccache nlohmann-json3-dev libcli11-dev
                  libocct-data-exchange-dev nettle-dev)

# holds_option CACHE -DNAME=VALUE: whether a tree is configured with that option already.
holds_option() {
    local assignment=${2#-D}
    grep -qE "^${assignment%%=*}:[A-Z]+=${assignment#*=}\$" "$1"
}

# configured DIRECTORY -DNAME=VALUE...: a build tree in which these options hold.
configured() {
    local tree=$1 cache="$1/CMakeCache.txt" option changed=no
    shift
    if [ -f "$cache" ] && ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$root" "$cache"; then
        rm -rf "$tree"  # the repository has moved since
    fi
    [ -f "$tree/build.ninja" ] || changed=yes
    for option in "$@"; do
        [ "$changed" = yes ] || holds_option "$cache" "$option" || changed=yes
    done
    [ "$changed" = no ] && return
    say "configuring ${tree#"$root"/}"
    quietly cmake -S "$root" -B "$tree" -G Ninja -DCMAKE_CXX_COMPILER_LAUNCHER=ccache "$@"
}

# built DIRECTORY TARGET...: up to date, with the compiler's own words where it fails.
built() {
    local tree=$1
    shift
    say "building ${tree#"$root"/}: $*"
    quietly cmake --build "$tree" -j "$jobs" --target "$@"
}

release="$out/build/release"
release_options=(-DCMAKE_BUILD_TYPE=Release -DBOWFRONT_WERROR=ON)

# The program and its kernel module in out/bin and out/lib/bowfront.
program_built() {
    need_packages "${program_packages[@]}"
    configured "$release" "${release_options[@]}"
    built "$release" bowfront bowfront_kernel_module
    quietly cmake --install "$release" --component program --prefix "$out"
}

# The names of all examples, pilot-boat first.
example_names() {
    local case_file name
    echo pilot-boat
    for case_file in "$root"/examples/*/case.json; do
        name=$(basename "$(dirname "$case_file")")
        [ "$name" = pilot-boat ] || echo "$name"
    done
}

# examples_made FOLDER: every example made into FOLDER/<its name>; names those that fail.
examples_made() {
    local name failed=()
    for name in $(example_names); do
        say "making $name"
        "$out/bin/bowfront" make "$root/examples/$name/case.json" -o "$1/$name" </dev/null ||
            failed+=("$name")
    done
    if [ ${#failed[@]} -gt 0 ]; then
        printf 'examples that failed: %s\n' "${failed[*]}" >&2
        return 1
    fi
}
