#!/usr/bin/env bash
# Installs the Debian packages named in third_party/packages.txt that are missing.
# Usage: install-packages.sh [build] [test] [check] [measure]    (groups of that file; none: build)
set -euo pipefail
here=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
groups=("$@")
[ ${#groups[@]} -gt 0 ] || groups=(build)

wanted=$(awk -v groups=" ${groups[*]} " '
  /^\[/ { group = substr($0, 2, length($0) - 2); next }
  /^[^#]/ && NF { if (index(groups, " " group " ")) print $1 }' "$here/third_party/packages.txt")

missing=()
for package in $wanted; do
  state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null || true)
  [ "$state" = installed ] || missing+=("$package")
done
if [ ${#missing[@]} -eq 0 ]; then
  echo "packages: all there (${groups[*]})"
  exit 0
fi

as_root=()
if [ "$(id -u)" -ne 0 ]; then
  if ! command -v sudo >/dev/null; then
    echo "These packages are missing, and only root can install them:" >&2
    printf '  %s\n' "${missing[@]}" >&2
    exit 2
  fi
  as_root=(sudo)
fi
echo "packages: installing ${missing[*]}"
"${as_root[@]}" apt-get update -qq
"${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}"
