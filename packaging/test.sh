#!/usr/bin/env bash
# test.sh [--no-sanitizers]: installs what is missing, builds and runs every test, then once more under the
# address and undefined-behaviour sanitizers. The last lines are ctest's own summary.
set -euo pipefail

root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)
# shellcheck source=packaging/dependencies.sh
source "$root/packaging/dependencies.sh"

kinds=(dev asan)
case ${1:-} in
'') ;;
--no-sanitizers) kinds=(dev) ;;
*)
    printf 'usage: %s [--no-sanitizers]\n' "${0##*/}" >&2
    exit 2
    ;;
esac

ensure_packages "${build_packages[@]}" "${run_packages[@]}" "${test_packages[@]}"

# No window appears, and no setting of the user's session reaches the tests or is touched by them.
home=$(mktemp -d)
trap 'rm -rf -- "$home"' EXIT
mkdir -m 700 "$home/runtime"
tests_environment=(
    HOME="$home" XDG_RUNTIME_DIR="$home/runtime"
    QT_QPA_PLATFORM=offscreen LC_ALL=C.UTF-8
    ASAN_OPTIONS=detect_stack_use_after_return=1
    UBSAN_OPTIONS=print_stacktrace=1
)

for kind in "${kinds[@]}"; do
    printf '== %s ==\n' "$kind"
    # SANITIZED_WITHOUT: a pattern of tests that the second kind leaves to the first.
    leave_out=()
    if [[ $kind == asan && -n ${SANITIZED_WITHOUT:-} ]]; then leave_out=(--exclude-regex "$SANITIZED_WITHOUT"); fi
    "$root/packaging/build.sh" "$kind"
    env -u XDG_CONFIG_HOME -u XDG_DATA_HOME -u XDG_STATE_HOME -u XDG_CACHE_HOME -u DISPLAY -u WAYLAND_DISPLAY \
        "${tests_environment[@]}" \
        ctest --test-dir "$root/build/$kind" --output-on-failure --no-tests=error --parallel "${JOBS:-$(nproc)}" \
        "${leave_out[@]}"
done
