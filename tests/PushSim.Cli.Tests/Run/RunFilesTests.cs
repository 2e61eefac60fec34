using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>Which files a run writes, and what stands in them.</summary>
public class RunFilesTests
{
    // 1000 samples a second and a row each hundredth of one: the same rows, and the last
    [Fact]
    public void A_thinned_history_has_rows_of_the_whole_one()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("run", Repository.Scenario("launch-soft"), "--no-plots", "--quiet", "--out", scratch["thin"]).Code);
        Assert.Equal(ExitCode.Done, Cli.Run("run", Repository.Scenario("launch-soft"), "--no-plots", "--csv", "--quiet", "--out", scratch["whole"]).Code);
        string[] thin = File.ReadAllLines(scratch["thin/history.csv"]);
        string[] whole = File.ReadAllLines(scratch["whole/history.csv"]);
        Assert.True(whole.Length > 1000, $"{whole.Length} rows");
        int last = whole.Length - 1;
        Assert.Equal([whole[0], .. Enumerable.Range(0, last).Where(i => i % 10 == 0 || i == last - 1).Select(i => whole[i + 1])], thin);
    }

    [Theory]
    [InlineData("png", "plot.png")]
    [InlineData("svg,pdf", "plot.pdf plot.svg")]
    [InlineData("png, svg, pdf", "plot.pdf plot.png plot.svg")]
    public void Pictures_are_written_in_the_forms_asked_for(string formats, string files)
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("run", Repository.Scenario("launch-soft"), "--format", formats, "--quiet", "--out", scratch["out"]).Code);
        Assert.Equal(files, string.Join(' ', Directory.GetFiles(scratch["out"], "plot.*").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)));
    }

    [Theory]
    [InlineData("gif")]
    [InlineData("png,")]
    [InlineData("PNG")]
    public void Another_form_is_refused(string formats)
    {
        Cli cli = Cli.Run("run", Repository.Scenario("launch-soft"), "--format", formats);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains($"--format takes png, svg and pdf, with commas between them, not \"{formats}\"", cli.Error);
    }
}
