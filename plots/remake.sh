#!/usr/bin/env bash
# Remakes the pictures that pages show; a file is replaced only where its picture changed.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$here/.."
dotnet build -c Release --nologo -v quiet

# the same bytes or, where ImageMagick is there to tell, the same dots
same() {
    cmp -s "$1" "$2" || { [ -f "$2" ] && command -v compare >/dev/null && compare -metric AE "$1" "$2" null: 2>/dev/null; }
}

# name of the picture here, which of the command's pictures it is, then the command line
picture() {
    if [ "$3" = open ]; then
        # the page that a browser test looks at
        PUSHSIM_SCREENSHOTS="$work/$1" "tests/PushSim.Workbench.Tests/bin/Release/net10.0/PushSim.Workbench.Tests" -class "PushSim.Workbench.Tests.Page.StripPageTests" >/dev/null
        same "$work/$1/$2.png" "$here/$1.png" || { cp "$work/$1/$2.png" "$here/$1.png"; echo "$1.png is new"; }
        return
    fi
    dotnet src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll "${@:3}" --out "$work/$1" --quiet
    same "$work/$1/$2.png" "$here/$1.png" || { cp "$work/$1/$2.png" "$here/$1.png"; echo "$1.png is new"; }
}

picture workbench strips open scenarios/shove-heavy-grippy.toml
picture shove-heavy-grippy plot run scenarios/shove-heavy-grippy.toml
picture pull-test plot run scenarios/pull-test.toml
picture spot-turn plot run scenarios/spot-turn.toml
picture chatter-map map run scenarios/spot-bouncy-tyre.toml --map "tyre.sleeve.body_damping=0.1..3 N s/m" --map "tyre.sleeve.slip_speed=0.1..2 m/s"
picture sweep-map plot sweep scenarios/shove-equals.toml --vary "chassis.mass=1 kg..2 kg" --vary "drive.*.gear_ratio=15..35" --points 6 --ask ground_rate_m_per_s
picture ladder plot ladder scenarios/robots/*.toml --matches 40
picture odds plot odds scenarios/shove-heavy-grippy.toml
picture fit-simulated simulated fit scenarios/logs/mole-pulls.csv --robot scenarios/pull-test.toml --simulate
