#!/usr/bin/env bash
# Changes the engine at random places, one at a time, and looks whether the hashes that journals carry (EngineSelfTest and, of what is
# read and drawn, the campaign's) change wherever finished matches do. Finished matches are those of
# a ladder of all shipped robots and of the shipped shoves with ramp, offset and lifted wheel. A change that alters a match but not the hash would mix results of two engines.
# Run: tests/engine-mutations.sh [COUNT] [SEED] [LOG] [SITES]; about half a minute each; SITES, lines FILE:LINE:COLUMN 'TEXT' as the log has them, takes those places instead of drawn ones. Ends with 0 if no change is missed.
set -u
root=$(cd "$(dirname "$0")/.." && pwd)
count=${1:-30}
seed=${2:-1}
log=${3:-engine-mutations.log}
: > "$log"
log=$(realpath "$log")
given=${4:+$(realpath "$4")}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
say() { printf '%s\n' "$*" | tee -a "$log"; }

dotnet build -c Release -v q -p:RunAnalyzers=false "$root/src/PushSim.Cli" >/dev/null || exit 1
cp -r "$root/src/PushSim.Cli/bin/Release/net10.0" "$work/bin"
mkdir -p "$work/repo/src"
cp -r "$root/src/PushSim" "$work/repo/src/"
rm -rf "$work/repo/src/PushSim/bin" "$work/repo/src/PushSim/obj"
cp "$root"/Directory.*.props "$root/global.json" "$root/.editorconfig" "$work/repo/"
cp -r "$root/scenarios" "$work/"
cd "$work" || exit 1
# the compiler's own command line, taken from one build: its server compiles a mutant in two seconds
(cd repo && dotnet build src/PushSim -c Release -v d -p:RunAnalyzers=false -p:GenerateDocumentationFile=false -p:UseSharedCompilation=false) > built.log 2>&1
compiler=$(grep -o -m1 '/[^ ]*/bincore/csc ' built.log)
grep -m1 '/bincore/csc /noconfig' built.log | sed 's|.*/bincore/csc /noconfig ||' > engine.rsp
build() {
    (cd repo/src/PushSim && "${compiler% }" /shared /noconfig @"$work/engine.rsp" >/dev/null 2>&1) || return 1
    cp repo/src/PushSim/obj/Release/net10.0/PushSim.dll bin/
}

# finished matches, without the two columns that hang on the hash, and the hash itself. The shoves are played where the ladder has not shown a change of the hash: a change that is told is not missed.
# A run that ends early for want of time would pass for a change, so the limit is far from what a busy machine needs.
play() {
    rm -rf out && mkdir out
    timeout 900 dotnet bin/PushSim.Cli.dll ladder scenarios/robots/*.toml --matches 1 --part 1/1 --quiet --out out/ladder >/dev/null 2>&1
    if [ "$1" = own ] || [ "$(head -1 own.hash)" = "$(hash_of)" ]; then
        for shove in shove-ramp-flat shove-off-centre shove-lifted-wheel; do
            timeout 900 dotnet bin/PushSim.Cli.dll odds "scenarios/$shove.toml" --matches 4 --part 1/1 --quiet --out "out/$shove" >/dev/null 2>&1
        done
    fi
    for part in out/*/part-1-of-1.csv; do echo "$part"; grep '^[0-9]' "$part" | sed 's/,[0-9a-f]*,[0-9a-f]*$//' | sort; done > "$1.rows"
    hash_of > "$1.hash"
}
hash_of() { grep -H -o 'engine [0-9a-f]*; campaign [0-9a-f]*' out/*/part-1-of-1.csv | sort -u; }

# numbers with a point, and operators between blanks, in what the equations, the integrator and the judge are written in
sites() {
    for folder in Numerics Chassis Tyres Powertrain Surroundings Contact Simulation Runs Binding; do find "repo/src/PushSim/$folder" -name '*.cs'; done | sort | xargs awk '
        /^ *\/\// || /^ *\/\*/ || /^using/ || /^namespace/ || /=>? *"/ { next }
        {
            code = $0; sub(/ \/\/ .*/, "", code); at = 1
            while (match(substr(code, at), /[0-9]+\.[0-9]+(e-?[0-9]+)?| [-+*\/] | [<>] /)) {
                found = substr(code, at + RSTART - 1, RLENGTH)
                printf "%s\t%d\t%d\t%s\n", FILENAME, FNR, at + RSTART - 1, found
                at += RSTART + RLENGTH - 1
            }
        }'
}
sites_given() { awk -F '\t' -v list="$given" 'BEGIN { while ((getline line < list) > 0) { sub(/: matches.*/, "", line); want[line] = 1 } } { n = split($1, p, "/"); if (want[p[n] ":" $2 ":" $3 " \047" $4 "\047"]) print }' all.sites > drawn.sites; }
sites > all.sites
awk -v seed="$seed" 'BEGIN { srand(seed) } { printf "%.12f\t%s\n", rand(), $0 }' all.sites | sort | cut -f2- > drawn.sites
[ -n "${4:-}" ] && sites_given
build || { echo 'the engine itself does not build'; exit 1; }
play own
say "engine of $(grep -c . all.sites) places, seed $seed; $(grep -c '^[0-9]' own.rows) matches; $(cat own.hash)"

made=0; changed=0; hashed=0; missed=0
while [ "$made" -lt "$count" ] && IFS=$'\t' read -r file line column from <&3; do
    cp "$file" original
    awk -v line="$line" -v column="$column" -v from="$from" '
        FNR == line {
            to = from == " + " ? " - " : from == " - " ? " + " : from == " * " ? " / " : from == " / " ? " * " : from == " < " ? " > " : from == " > " ? " < " : from == "0.0" ? "1e-3" : from "1"
            if (from ~ /e/) { split(from, p, "e"); to = p[1] "1e" p[2] }
            $0 = substr($0, 1, column - 1) to substr($0, column + length(from))
        }
        { print }' original > "$file"
    if build; then
        made=$((made + 1))
        play mutant
        rows=same; hash=same
        grep -q '^out/shove' mutant.rows && cp own.rows due.rows || sed '/^out\/shove/,$d' own.rows > due.rows
        cmp -s due.rows mutant.rows || { rows=differ; changed=$((changed + 1)); }
        cmp -s own.hash mutant.hash || { hash=differs; hashed=$((hashed + 1)); }
        [ "$rows" = differ ] && [ "$hash" = same ] && missed=$((missed + 1))
        say "$(basename "$file"):$line:$column '$from': matches $rows, hash $hash$([ "$rows" = differ ] && [ "$hash" = same ] && echo ', MISSED')"
    fi
    cp original "$file"
done 3< drawn.sites
say "$made mutants: $changed change matches, $hashed change the hash, $missed missed"
[ "$missed" = 0 ]
