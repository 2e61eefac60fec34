#!/usr/bin/env bash
# Remakes every picture in this folder from the scenarios.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
dotnet build "$here/../src/PushSim.Cli" -c Release --nologo -v quiet
for scenario in "$here"/../scenarios/*.toml; do
    name=$(basename "$scenario" .toml)
    rank=$(test "$name" = tyre-wear && echo --rank-tyres || true)
    dotnet "$here/../src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll" run "$scenario" --out "$work/$name" --quiet $rank
    cp "$work/$name/plot.png" "$here/$name.png"
    for picture in wear grip tyres; do
        case "$name-$picture" in
            tyre-*) if [ -f "$work/$name/$picture.png" ]; then cp "$work/$name/$picture.png" "$here/$name-$picture.png"; fi ;;
        esac
    done
done
dotnet "$here/../src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll" run "$here/../scenarios/spot-bouncy-tyre.toml" --out "$work/map" --quiet \
    --map "tyre.sleeve.body_damping=0.1..3 N s/m" --map "tyre.sleeve.slip_speed=0.1..2 m/s"
cp "$work/map/map.png" "$here/chatter-map.png"
