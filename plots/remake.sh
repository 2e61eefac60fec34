#!/usr/bin/env bash
# Remakes every picture in this folder from the scenarios.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet build "$here/../src/PushSim.Cli" -c Release --nologo -v quiet
for scenario in "$here"/../scenarios/*.toml; do
    name=$(basename "$scenario" .toml)
    dotnet "$here/../src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll" run "$scenario" --out "$work/$name" --quiet
    cp "$work/$name/plot.png" "$here/$name.png"
done
