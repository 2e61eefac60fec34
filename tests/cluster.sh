#!/usr/bin/env bash
# Plays campaigns in parts the way `pushsim cluster` prints them, on one machine: as array jobs of a batch cluster (Debian's slurm-wlm and munge), with GNU parallel, and as the entry of
# an indexed container job with its index set by hand. Parts are killed and requeued on the way; what is merged must be the single run to the byte, but for its speed.
# Needs root, and leave to install packages. Run: tests/cluster.sh [FOLDER FOR THE LOG]; about five minutes. Ends with 0 if all is the same.
set -u
root=$(cd "$(dirname "$0")/.." && pwd)
out=${1:-.}
mkdir -p "$out" && out=$(cd "$out" && pwd)
for tool in slurmctld slurmd munged parallel; do
    command -v "$tool" >/dev/null || { apt-get update && apt-get install -y --no-install-recommends slurm-wlm munge parallel; } >/dev/null 2>&1
done
work=$(mktemp -d)
log=$out/cluster.log
: > "$log"
failed=0
daemons=()
say() { printf '%s\n' "$*" | tee -a "$log"; }
stop() {
    scancel --user=root 2>/dev/null
    for pid in "${daemons[@]}"; do kill "$pid" 2>/dev/null; done
    rm -rf "$work"
}
trap stop EXIT

dotnet build -c Release -v q -p:RunAnalyzers=false "$root/src/PushSim.Cli" >/dev/null || exit 1
mkdir "$work/bin"
cp -r "$root/src/PushSim.Cli/bin/Release/net10.0" "$work/program"
printf '#!/bin/sh\nexec dotnet "%s" "$@"\n' "$work/program/PushSim.Cli.dll" > "$work/bin/pushsim"
chmod +x "$work/bin/pushsim"
export PATH=$work/bin:$PATH
cp -r "$root/scenarios/robots" "$root/scenarios/shove-equals.toml" "$work/"
cd "$work" || exit 1

# a cluster of this machine alone
host=$(hostname -s)
dd if=/dev/urandom of=munge.key bs=1 count=1024 2>/dev/null
chmod 600 munge.key
chmod 755 "$work"
munged --force --foreground --key-file "$work/munge.key" --socket "$work/munge.socket" --pid-file "$work/munge.pid" --log-file "$work/munge.log" --seed-file "$work/munge.seed" >/dev/null 2>&1 &
daemons+=($!)
cat > slurm.conf <<END
ClusterName=one
SlurmctldHost=$host
AuthType=auth/munge
AuthInfo=socket=$work/munge.socket
CredType=cred/munge
SlurmUser=root
SlurmdUser=root
StateSaveLocation=$work/state
SlurmdSpoolDir=$work/spool
SlurmctldPidFile=$work/slurmctld.pid
SlurmdPidFile=$work/slurmd.pid
SlurmctldLogFile=$work/slurmctld.log
SlurmdLogFile=$work/slurmd.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
JobAcctGatherType=jobacct_gather/none
SelectType=select/cons_tres
SelectTypeParameters=CR_Core
ReturnToService=2
JobRequeue=1
MinJobAge=3600
NodeName=$host CPUs=$(nproc) State=UNKNOWN
PartitionName=all Nodes=ALL Default=YES MaxTime=INFINITE State=UP
END
export SLURM_CONF=$work/slurm.conf
mkdir state spool
sleep 1
slurmctld -D -f "$SLURM_CONF" >/dev/null 2>&1 &
daemons+=($!)
sleep 2
slurmd -D -f "$SLURM_CONF" >/dev/null 2>&1 &
daemons+=($!)
for _ in $(seq 30); do sinfo -h -o %t 2>/dev/null | grep -q idle && break; sleep 1; done
say "cluster: $(sinfo --version), node $(sinfo -h -o '%t %c CPUs'); $(parallel --version | head -1)"

rows() { local n; n=$(grep -c '^[0-9]' "$1" 2>/dev/null); echo "${n:-0}"; }
until_rows() { for _ in $(seq 600); do [ "$(rows "$1")" -ge "$2" ] && return; sleep 0.1; done; }
ended() { for _ in $(seq 1200); do squeue -h -j "$1" 2>/dev/null | grep -q . || return 0; sleep 0.5; done; return 1; }
plain() { grep -vE '_(per_second|ms)"' "$1"; }
# compares what the parts merge to with the single run
merged() {
    local name=$1 how=$2
    shift 2
    pushsim "$@" --merge --check | tee -a "$log"
    pushsim "$@" --merge --json > "$how.json" 2>> "$log"
    if cmp <(plain "$name.json") <(plain "$how.json"); then say "$name, $how: merged to the single run, $(plain "$how.json" | wc -c) bytes"; else say "$name, $how: DIFFERENT"; failed=1; fi
}

campaign() {
    local name=$1
    shift
    say ""
    say "$name: pushsim $*"
    pushsim "$@" --json --out whole > "$name.json" || failed=1

    # array job: one task killed as it plays and sent again, one requeued as it plays
    pushsim cluster --parts 4 --script array -- "$@" --out "array-$name" > array.sh
    job=$(sbatch --parsable array.sh)
    until_rows "array-$name/part-2-of-4.csv" 20
    scancel --signal=KILL --full "${job}_2"
    say "$name, array: task 2 killed with $(rows "array-$name/part-2-of-4.csv") rows"
    until_rows "array-$name/part-3-of-4.csv" 20
    scontrol requeue "${job}_3" && say "$name, array: task 3 requeued with $(rows "array-$name/part-3-of-4.csv") rows"
    ended "$job" || { say "$name, array: not ended"; failed=1; }
    pushsim cluster --parts 4 -- "$@" --out "array-$name" | sed '/^--script/,$d' | tee -a "$log"
    again=$(sbatch --parsable --array=2 array.sh)
    ended "$again"
    say "$name, array: $(grep -h 'going on after' slurm-*.out | sort | tr '\n' ';')"
    merged "$name" array "$@" --out "array-$name"

    # parallel: one of its processes killed; it is tried again
    pushsim cluster --parts 4 --script parallel -- "$@" --out "parallel-$name" > parallel.sh
    sh parallel.sh > parallel.log 2>&1 &
    local shell=$!
    until_rows "parallel-$name/part-1-of-4.csv" 20
    local victim
    victim=$(for p in $(ps -o pid= --ppid "$shell"); do ps -o pid=,args= --ppid "$p"; done | grep -F -- '--part 1/4' | awk '{ print $1; exit }')
    local inner
    inner=$(ps -o pid= --ppid "$victim" | head -1)
    kill -9 ${inner:-$victim} && say "$name, parallel: part 1 killed with $(rows "parallel-$name/part-1-of-4.csv") rows"
    wait "$shell"
    say "$name, parallel: $(grep -h 'going on after' parallel.log | tr '\n' ';')"
    merged "$name" parallel "$@" --out "parallel-$name"

    # container: the entry of the job, its index set by hand; one killed and run again
    pushsim cluster --parts 4 --script container -- "$@" --out "container-$name" > container.yaml
    entry=$(sed -n '/^        - |$/{n;s/^ *//;p}' container.yaml)
    for index in 0 1 2 3; do
        if [ $index = 1 ]; then
            JOB_COMPLETION_INDEX=$index sh -c "$entry" > /dev/null 2>&1 &
            local one=$!
            until_rows "container-$name/part-2-of-4.csv" 20
            kill -9 "$one" && say "$name, container: index 1 killed with $(rows "container-$name/part-2-of-4.csv") rows"
            wait "$one" 2>/dev/null
        fi
        JOB_COMPLETION_INDEX=$index sh -c "$entry" >> container.log 2>&1 || failed=1
    done
    merged "$name" container "$@" --out "container-$name"
}

campaign odds odds shove-equals.toml --matches 1200 --seed 7 --no-plots
campaign ladder ladder robots/mole.toml robots/badger.toml robots/wombat.toml --matches 300 --no-plots
say ""
say "$([ $failed = 0 ] && echo 'all the same' || echo 'NOT all the same')"
exit $failed
