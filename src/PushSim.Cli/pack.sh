#!/usr/bin/env bash
# Makes the packages of the .NET tool: on Linux x64 one that is compiled ahead of time and one for every other platform, elsewhere one for all.
# `dotnet tool install` takes the one that suits its machine. Run: bash src/PushSim.Cli/pack.sh [FOLDER], usually dist; needs gcc or clang on Linux.
set -eu
cd "$(dirname "$0")/../.."
out=${1:-dist}
pack() { dotnet pack -c Release -v q src/PushSim.Cli -o "$out" "$@"; }
if [ "$(uname -sm)" != "Linux x86_64" ]; then
    pack
    exit
fi
command -v gcc >/dev/null || command -v clang >/dev/null || { echo "pack.sh: needs gcc or clang; without: dotnet pack -c Release src/PushSim.Cli -o $out" >&2; exit 1; }
# the first names the other two
pack -p:PerPlatform=true -p:PublishAot=true
pack -p:PerPlatform=true -r any
pack -p:PerPlatform=true -p:PublishAot=true -r linux-x64
