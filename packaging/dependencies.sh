# shellcheck shell=bash
# Sourced by run.sh and test.sh: the Debian and Ubuntu packages that Lidwright needs, and the one function
# that puts the missing ones in. One package a line, so that a change reads well in a diff.

# To compile the program.
# shellcheck disable=SC2034  # read by the scripts that source this file
build_packages=(
    g++
    cmake
    ninja-build
    qt6-base-dev
    qt6-svg-dev
    libeigen3-dev
    libpolyclipping-dev
    libboost-dev
    nlohmann-json3-dev
    libpugixml-dev
)

# To run it. Qt finds its SVG plugins and the fonts only at run time: without the first the window has no icon,
# without the others every letter is a box.
# shellcheck disable=SC2034
run_packages=(
    libqt6svg6
    fontconfig
    fonts-dejavu-core
)

# To test it: the test framework, and the independent programs that read what Lidwright wrote.
# shellcheck disable=SC2034
test_packages=(
    libgtest-dev
    libgmock-dev
    libbenchmark-dev
    qpdf
    poppler-utils
    python3
    python3-ezdxf
    python3-shapely
    desktop-file-utils
    shared-mime-info
    appstream
)

# missing_packages NAME...: those of the names that are not installed, one a line.
missing_packages() {
    local name installed
    installed=$(dpkg-query --show --showformat='${db:Status-Status} ${Package}\n' "$@" 2>/dev/null |
        sed -n 's/^installed //p' || true)
    for name in "$@"; do
        grep -qxF -- "$name" <<<"$installed" || printf '%s\n' "$name"
    done
}

# ensure_packages NAME...: installs what is missing; says nothing and asks nothing when all is there.
# Ends the calling script with status 1 and a sentence that says what to do when it cannot.
# LIDWRIGHT_SKIP_PACKAGES=1 looks for nothing: for other systems, whose packages have other names.
ensure_packages() {
    [[ ${LIDWRIGHT_SKIP_PACKAGES:-} == 1 ]] && return 0
    if ! command -v dpkg-query >/dev/null; then
        printf '%s\n' \
            "This is neither Debian nor a relative of it, so nothing can be installed from here." \
            "Install your system's counterparts of these packages: $*" \
            "Then run this again with LIDWRIGHT_SKIP_PACKAGES=1 set." >&2
        exit 1
    fi

    local missing
    mapfile -t missing < <(missing_packages "$@")
    ((${#missing[@]} == 0)) && return 0
    command -v apt-get >/dev/null || cannot_install "there is no apt-get" "${missing[@]}"
    printf 'Installing %d missing packages: %s\n' "${#missing[@]}" "${missing[*]}"

    local as_root=(env DEBIAN_FRONTEND=noninteractive)
    if ((EUID != 0)); then
        if ! command -v sudo >/dev/null; then
            cannot_install "neither root nor sudo is to be had here" "${missing[@]}"
        fi
        # With nobody at the keyboard sudo must not wait for a password.
        if [[ -t 0 ]]; then as_root=(sudo "${as_root[@]}"); else as_root=(sudo -n "${as_root[@]}"); fi
    fi

    local log
    log=$(mktemp)
    # A failing update is no failure yet: the lists on disk may be good enough, and the install decides.
    "${as_root[@]}" apt-get -q update >"$log" 2>&1 || true
    if ! "${as_root[@]}" apt-get -q -y --no-install-recommends -o DPkg::Lock::Timeout=120 \
        install "${missing[@]}" >>"$log" 2>&1; then
        grep -E '^(E|Err|W|sudo):' "$log" | sort -u | head -n 8 >&2 || true
        rm -f "$log"
        cannot_install "apt-get failed (no network, or a package archive without these names)" "${missing[@]}"
    fi
    rm -f "$log"
}

# cannot_install REASON NAME...: the sentence, and the end of the script.
cannot_install() {
    local reason=$1
    shift
    printf '%s\n' \
        "Packages are missing and could not be installed: $reason." \
        "Install them yourself, then run this again:" \
        "    apt-get install --no-install-recommends $*" >&2
    exit 1
}
