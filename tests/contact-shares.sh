#!/usr/bin/env bash
# Shares of wins against the contact's numbers that have no measured source: stiffness, restitution, memory of friction up a face. 2000 matches each, seed 1; writes a table.
# Run after a Release build: tests/contact-shares.sh [FILE FOR THE TABLE] [MATCHES]; about ten minutes on two quiet cores.
set -eu
root=$(cd "$(dirname "$0")/.." && pwd)
table=${1:-$root/src/docs/contact-shares.md}
matches=${2:-2000}
pushsim=${PUSHSIM:-"dotnet $root/src/PushSim.Cli/bin/Release/net10.0/PushSim.Cli.dll"}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

row() {
    $pushsim odds "$root/scenarios/$1.toml" --matches "$matches" --seed 1 --set "$2" --json --out "$work/out" > "$work/odds.json"
    python3 - "$work/odds.json" "$1" "$2" >> "$table" <<'PY'
import json, sys
o = json.load(open(sys.argv[1]))
print("| %s | %s | %.1f (%.1f to %.1f) | %.1f | %.2f |" % (
    sys.argv[2], sys.argv[3], 100 * o["win_share"], 100 * o["win_share_low"], 100 * o["win_share_high"], 100 * o["lose_share"], 100 * o["stalemate_share"]))
PY
}

cat > "$table" <<EOF
# Shares against the contact's numbers

Written by \`tests/contact-shares.sh\`: $matches matches each, seed 1. Stiffness, restitution and memory of the
contact have no measured source. Stiffness is set to a quarter, once and four times its default, the others
to the ends of their ranges and the default between.

| scenario | set | first wins, % (counting error, 95 %) | loses | stalemate |
|---|---|---|---|---|
EOF
for scenario in shove-equals shove-off-centre; do
    for stiffness in 0.25 1 4; do row "$scenario" "contact.stiffness=$stiffness N/mm2"; done
    for restitution in 0.1 0.2 0.4; do row "$scenario" "contact.restitution=$restitution"; done
    for memory in 0.03 0.1 0.3; do row "$scenario" "contact.friction_memory=$memory s"; done
done
