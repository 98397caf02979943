#!/usr/bin/env bash
# run.sh [ARGUMENTS]: gets Lidwright running from a fresh checkout, from any folder.
# Installs the packages that are missing, builds the program, and then
#   with arguments            hands them to lidwright: run.sh my.lidplan
#   without, with a display   opens a sample plan
#   without, with no display  prints the sample's findings and writes its full-size templates
set -euo pipefail

root=$(cd -- "$(dirname -- "${BASH_SOURCE[0]}")/.." && pwd -P)
# shellcheck source=packaging/dependencies.sh
source "$root/packaging/dependencies.sh"

needed=("${build_packages[@]}" "${run_packages[@]}")
# Qt's own Wayland part is a package apart; with DISPLAY set it is not needed.
[[ -n ${WAYLAND_DISPLAY:-} && -z ${DISPLAY:-} ]] && needed+=(qt6-wayland)
ensure_packages "${needed[@]}"

"$root/packaging/build.sh" release --target lidwright
lidwright=$root/build/release/app/lidwright

if (($#)); then
    exec "$lidwright" "$@"
fi

sample=$root/resources/samples/harbour-light.lidplan
if [[ -n ${DISPLAY:-}${WAYLAND_DISPLAY:-} ]]; then
    exec "$lidwright" "$sample"
fi

printf 'No display here: Lidwright works from the command line.\n\n'
# Findings of the verdict "wrong" give a status of their own; the templates are of interest all the same.
status=0
"$lidwright" findings "$sample" || status=$?
templates=$root/build/templates
mkdir -p -- "$templates"
pdf=$templates/$(basename -- "$sample" .lidplan).pdf
"$lidwright" paper "$sample" -o "$pdf"
printf '\nFull-size templates of the sample: %s\n' "$pdf"
exit "$status"
