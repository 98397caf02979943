#!/usr/bin/env bash
# build.sh KIND [--target TARGET]...: configures and builds the tree into build/KIND.
#   dev      optimised a little, with assertions, tests and benchmarks: for daily work
#   asan     the same under the address and undefined-behaviour sanitizers
#   release  what users get: the program alone, no tests
# JOBS sets the number of compilers at once (default: one a processor). HEADERS_ALONE=OFF leaves out the
# compiling of every header by itself, a tenth of the time of dev. SANITIZE_WINDOW=OFF leaves asan to core,
# SANITIZE_NUMBERS=OFF leaves the long tests of plate and air out of it.
set -euo pipefail

root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)

usage() {
    printf 'usage: %s dev|asan|release [--target TARGET]...\n' "${0##*/}" >&2
    exit 2
}

(($# >= 1)) || usage
kind=$1
shift
targets=()
while (($#)); do
    [[ $1 == --target && $# -ge 2 ]] || usage
    targets+=("$2")
    shift 2
done

# -O1 keeps steps in a debugger readable and the tests quick; NDEBUG stays out, so assertions hold.
checked=(-DCMAKE_BUILD_TYPE=RelWithDebInfo "-DCMAKE_CXX_FLAGS_RELWITHDEBINFO=-O1 -g1" -DLIDWRIGHT_TESTS=ON)
case $kind in
dev) settings=("${checked[@]}" -DLIDWRIGHT_SANITIZE=OFF "-DLIDWRIGHT_HEADERS_ALONE=${HEADERS_ALONE:-ON}") ;;
asan) settings=("${checked[@]}" -DLIDWRIGHT_SANITIZE=ON "-DLIDWRIGHT_SANITIZE_WINDOW=${SANITIZE_WINDOW:-ON}"
    "-DLIDWRIGHT_SANITIZE_NUMBERS=${SANITIZE_NUMBERS:-ON}") ;;
# A warning that a newer compiler invents must not keep a maker from the program.
release) settings=(-DCMAKE_BUILD_TYPE=Release -DLIDWRIGHT_TESTS=OFF -DLIDWRIGHT_SANITIZE=OFF -DLIDWRIGHT_WERROR=OFF) ;;
*) usage ;;
esac

folder=$root/build/$kind

# CMake refuses a build folder that was made for another place, as after a move or a copy of the tree.
if [[ -f $folder/CMakeCache.txt ]] && ! grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$root" "$folder/CMakeCache.txt"; then
    printf 'The tree has moved: %s starts afresh.\n' "build/$kind"
    rm -rf -- "$folder"
fi

if command -v ccache >/dev/null; then
    settings+=(-DCMAKE_CXX_COMPILER_LAUNCHER=ccache)
    # Two clones of one state share their objects, wherever they lie.
    export CCACHE_BASEDIR=$root CCACHE_NOHASHDIR=1
fi

start=$SECONDS
log=$(mktemp)
trap 'rm -f -- "$log"' EXIT
# Ninja configures again by itself when a CMakeLists.txt changes; what is set here must be said once.
stamp=$folder/configured_with
if [[ ! -f $folder/build.ninja ]] || [[ $(cat "$stamp" 2>/dev/null) != "${settings[*]}" ]]; then
    if ! cmake -G Ninja -S "$root" -B "$folder" "${settings[@]}" >"$log" 2>&1; then
        cat "$log" >&2
        printf 'CMake could not configure %s; the lines above say why.\n' "build/$kind" >&2
        exit 1
    fi
    printf '%s' "${settings[*]}" >"$stamp"
fi

command=(cmake --build "$folder" --parallel "${JOBS:-$(nproc)}")
((${#targets[@]})) && command+=(--target "${targets[@]}")
"${command[@]}"
printf 'build/%s is up to date (%d s)\n' "$kind" "$((SECONDS - start))"
