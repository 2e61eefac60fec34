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
dotnet "$here/../src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll" run "$here/../scenarios/spot-bouncy-tyre.toml" --out "$work/map" --quiet \
    --map "tyre.sleeve.body_damping=0.1..3 N s/m" --map "tyre.sleeve.slip_speed=0.1..2 m/s"
cp "$work/map/map.png" "$here/chatter-map.png"
