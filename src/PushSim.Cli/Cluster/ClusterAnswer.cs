namespace PushSim.Cli.Cluster;

/// <summary>Parts and scripts of a campaign as text and as JSON.</summary>
internal static class ClusterAnswer
{
    // Parts that are named on the screen [1].
    private const int MostShown = 12;

    /// <summary>The state of the parts, then the scripts with how each is started; with details their texts.</summary>
    public static void Write(TextWriter output, JsonElement state, ClusterScripts scripts, bool isDetailed)
    {
        int most = isDetailed ? int.MaxValue : MostShown;
        output.WriteLine(Verdict(state, scripts));
        JsonElement[] open = [.. state.GetProperty("parts").EnumerateArray().Where(p => p.GetProperty("state").GetString() != "whole")];
        foreach (JsonElement p in open.Take(most))
        {
            string reason = p.GetProperty("reason").GetString()!;
            output.WriteLine(PlainText.Of(
                $"  part {p.GetProperty("part").GetInt64()}: {p.GetProperty("state").GetString()}, {p.GetProperty("finished_matches").GetInt64()} of {p.GetProperty("matches").GetInt64()} matches{(reason.Length > 0 ? "; " + reason : "")}"));
        }

        if (open.Length > most)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  and {open.Length - most} more: --details"));
        }

        if (!isDetailed)
        {
            foreach (string name in ClusterScripts.Names)
            {
                WrappedText.Write(output, $"--script {name}: ", "  ", ClusterScripts.About(name));
            }

            output.WriteLine("The texts of all scripts: --details");
            return;
        }

        foreach (string name in ClusterScripts.Names)
        {
            output.WriteLine();
            output.WriteLine($"--script {name}: {ClusterScripts.About(name)}");
            output.WriteLine();
            output.Write(scripts[name]);
        }
    }

    public static string Json(JsonElement state, ClusterScripts scripts) => CommandJson.Write(w =>
    {
        CommandJson.WriteHead(w, "cluster", Verdict(state, scripts), []);
        w.WriteBoolean("whole", state.GetProperty("whole").GetBoolean());
        w.WritePropertyName("parts");
        state.GetProperty("parts").WriteTo(w);
        w.WriteStartObject("scripts");
        foreach (string name in ClusterScripts.Names)
        {
            w.WriteString(name, scripts[name]);
        }

        w.WriteEndObject();
    });

    private static string Verdict(JsonElement state, ClusterScripts scripts)
    {
        string found = PlainText.Of(state.GetProperty("verdict").GetString()!);
        int there = state.GetProperty("parts").GetArrayLength();
        return there == 0 || there == scripts.Parts ? found : string.Create(CultureInfo.InvariantCulture, $"{found} These scripts are for {scripts.Parts} parts: name another folder, or --parts {there}.");
    }
}
