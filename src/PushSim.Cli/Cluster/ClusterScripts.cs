namespace PushSim.Cli.Cluster;

/// <summary>Scripts that play the parts of a campaign and join them.</summary>
/// <param name="campaign">The campaign's own command line.</param>
/// <param name="parts">Count of parts [1].</param>
internal sealed class ClusterScripts(IReadOnlyList<string> campaign, int parts)
{
    public const string Array = "array";
    public const string Parallel = "parallel";
    public const string Container = "container";
    public const string Merge = "merge";

    public static IReadOnlyList<string> Names => [Array, Parallel, Container, Merge];

    public int Parts => parts;

    /// <summary>A script by its name.</summary>
    public string this[string name] => name switch
    {
        Array => Lines(
            "#!/bin/sh", $"#SBATCH --job-name=pushsim-{campaign[0]}", Text($"#SBATCH --array=1-{parts}"), "#SBATCH --cpus-per-task=1", "#SBATCH --requeue", "#SBATCH --open-mode=append",
            "# One part a task. A task that was killed or requeued goes on where it stopped.",
            $"exec {Part("\"${SLURM_CPUS_PER_TASK:-1}\"", "\"${SLURM_ARRAY_TASK_ID}/" + Text($"{parts}\""))}"),
        Parallel => Lines(
            "#!/bin/sh", "# One part a processor. What is finished is not played again, so the script may be run again at any time.",
            Text($"seq 1 {parts} | parallel -q --retries 3 {Part("1", $"{{}}/{parts}")}")),
        Container => Lines(
            "# One part an index. The volume holds the files, and takes the parts; image and volume are yours to name.",
            "apiVersion: batch/v1", "kind: Job", "metadata:", $"  name: pushsim-{campaign[0]}", "spec:", "  completionMode: Indexed", Text($"  completions: {parts}"), Text($"  parallelism: {parts}"),
            Text($"  backoffLimit: {4 * parts}"), "  template:", "    spec:", "      restartPolicy: OnFailure", "      containers:", "      - name: part", "        image: pushsim", "        workingDir: /work",
            "        command: [\"/bin/sh\", \"-c\"]", "        args:", "        - |",
            $"          exec {Part("1", "\"$((JOB_COMPLETION_INDEX + 1))/" + Text($"{parts}\""))}",
            "        volumeMounts:", "        - name: work", "          mountPath: /work", "      volumes:", "      - name: work", "        persistentVolumeClaim:", "          claimName: pushsim-work"),
        _ => Lines("#!/bin/sh", $"exec {Words(campaign)} --merge"),
    };

    /// <summary>What the script is for, and how it is started.</summary>
    public static string About(string name) => name switch
    {
        Array => "array job of a batch cluster (sbatch SCRIPT)",
        Parallel => "one machine with GNU parallel (sh SCRIPT)",
        Container => "indexed container job (kubectl apply -f SCRIPT)",
        _ => "when all parts are whole: the answer (sh SCRIPT)",
    };

    private string Part(string threads, string part) =>
        $"{Words(campaign)}{(campaign.Any(w => w.Split('=')[0] == "--threads") ? "" : " --threads " + threads)} --quiet --part {part}";

    private static string Words(IEnumerable<string> words) => "pushsim " + string.Join(' ', words.Select(CommandLine.Word));

    private static string Lines(params string[] lines) => string.Concat(lines.Select(l => l + "\n"));

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
