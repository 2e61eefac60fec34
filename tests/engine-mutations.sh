#!/usr/bin/env bash
# Changes the engine at random places, one at a time, and looks whether the hashes that journals carry (EngineSelfTest and, of what is read and drawn, the campaign's) change wherever finished matches do: a change that
# alters a match but not the hash of its journal would mix results of two engines. The matches are those of `Benchmarks engine`: a ladder of all shipped robots and the shipped shoves with ramp, offset and lifted wheel.
# Run: tests/engine-mutations.sh [COUNT] [SEED] [LOG] [SITES]; two to five seconds of a core each, more where the change makes the integrator struggle. A log of the same engine and seed goes on where it stopped. SITES, lines FILE:LINE:COLUMN 'TEXT' as the log has them, takes
# those places instead of drawn ones. Ends with 0 if no change is missed.
set -u
root=$(cd "$(dirname "$0")/.." && pwd)
count=${1:-30}
seed=${2:-1}
log=${3:-engine-mutations.log}
touch "$log"
log=$(realpath "$log")
given=${4:+$(realpath "$4")}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
say() { printf '%s\n' "$*" | tee -a "$log"; }

dotnet build -c Release -v q -p:RunAnalyzers=false "$root/tests/Benchmarks" >/dev/null || exit 1
cp -r "$root/tests/Benchmarks/bin/Release/net10.0" "$work/bin"
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

# Scalar, since a processor without wide instructions plays the same bits and compiles in half the time; but where the lanes themselves are changed, as they are.
play() {
    local wide=0
    case $1$2 in own* | */Numerics/*) wide=1 ;; esac
    DOTNET_EnableAVX2=$wide DOTNET_TieredPGO=0 DOTNET_gcConcurrent=0 timeout 900 dotnet bin/Benchmarks.dll engine scenarios ${2:+own.rows} > "$1.rows" 2>/dev/null
}
column() { cut -f "$1" "$2.rows"; }

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
play own ''
head="engine of $(grep -c . all.sites) places, seed $seed; $(grep -c . own.rows) matches; $(column 3 own | sort -u | sha256sum | cut -c1-16)"
if [ "$(head -1 "$log")" = "$head" ]; then sed -i '/ mutants: /d' "$log"; else : > "$log"; say "$head"; fi

made=0; changed=0; hashed=0; missed=0
count_in() {
    made=$((made + 1))
    case $1 in *'matches differ'*) changed=$((changed + 1)) ;; esac
    case $1 in *'hash differs'*) hashed=$((hashed + 1)) ;; esac
    case $1 in *MISSED*) missed=$((missed + 1)) ;; esac
}
while [ "$made" -lt "$count" ] && IFS=$'\t' read -r file line column from <&3; do
    at="$(basename "$file"):$line:$column '$from'"
    known=$(awk -v at="$at: matches " 'index($0, at) == 1' "$log")
    if [ -n "$known" ]; then count_in "$known"; continue; fi
    cp "$file" original
    awk -v line="$line" -v column="$column" -v from="$from" '
        FNR == line {
            to = from == " + " ? " - " : from == " - " ? " + " : from == " * " ? " / " : from == " / " ? " * " : from == " < " ? " > " : from == " > " ? " < " : from == "0.0" ? "1e-3" : from "1"
            if (from ~ /e/) { split(from, p, "e"); to = p[1] "1e" p[2] }
            $0 = substr($0, 1, column - 1) to substr($0, column + length(from))
        }
        { print }' original > "$file"
    if build; then
        play mutant "$file"
        rows=same; hash=same
        cmp -s <(column 1,2 own) <(column 1,2 mutant) || rows=differ
        cmp -s <(column 1,3 own) <(column 1,3 mutant) || hash=differs
        told="$at: matches $rows, hash $hash"
        awk -F '\t' 'NR == FNR { was[$1] = $2; of[$1] = $3; next } of[$1] == $3 && was[$1] != $2 { missed = 1 } END { exit !missed }' own.rows mutant.rows && told="$told, MISSED"
        say "$told"
        count_in "$told"
    fi
    cp original "$file"
done 3< drawn.sites
say "$made mutants: $changed change matches, $hashed change the hash, $missed missed"
[ "$missed" = 0 ]
