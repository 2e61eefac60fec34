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
# the other commands: name of the picture here, then the command line
picture() {
    dotnet "$here/../src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll" "${@:2}" --out "$work/$1" --quiet
    cp "$work/$1/plot.png" "$here/$1.png"
}
cd "$here/.."
picture limits limits scenarios/pull-test.toml
picture odds odds scenarios/shove-heavy-grippy.toml
picture sweep sweep scenarios/pull-test.toml --vary "drive.*.gear_ratio=10..40"
picture sweep-map sweep scenarios/shove-equals.toml --vary "chassis.mass=1 kg..2 kg" --vary "drive.*.gear_ratio=15..35" --points 6
picture ladder ladder scenarios/robots/*.toml --matches 40
picture fit fit scenarios/logs/mole-pulls.csv --robot scenarios/pull-test.toml --simulate
cp "$work/fit/simulated.png" "$here/fit-simulated.png"
