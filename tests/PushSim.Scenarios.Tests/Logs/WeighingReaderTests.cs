using PushSim.Analysis.Wear;
using PushSim.Scenarios.Notebook;
using PushSim.Scenarios.Sources;
using Xunit;

namespace PushSim.Scenarios.Tests.Logs;

public class WeighingReaderTests
{
    [Theory]
    [InlineData("before [g],after [g],time [s]\n12.419,12.406,3600\n")]
    [InlineData("# ours\nday,time_min,mass_before_g,mass_after_mg\nMonday,60,12.419,12406\n")]
    [InlineData("Before (g),After (g),Time\n12.419,12.406,3600\n")]
    public void Masses_and_time_come_by_name_and_unit(string text)
    {
        Weighing only = Assert.Single(WeighingReader.Parse("w.csv", text, out Problem? problem));
        Assert.Null(problem);
        Assert.Equal(0.012419, only.Before, 1e-12);
        Assert.Equal(13e-6, only.Loss, 1e-12);
        Assert.Equal(3600.0, only.Time, 1e-9);
        Assert.Equal(1e-6, only.Step, 1e-12);
    }

    [Theory]
    [InlineData("", "these are no weighings")]
    [InlineData("before [g],time [s]\n1,2\n", "these are no weighings")]
    [InlineData("before [g],after [g],time [s]\n", "there is no weighing in it")]
    [InlineData("before [g],after [g],time [s]\n1.0,heavy,60\n", "\"heavy\" is no after above zero")]
    [InlineData("before [g],after [g],time [s]\n1.0,0.9,0\n", "\"0\" is no time above zero")]
    public void What_is_wrong_is_said(string text, string message)
    {
        _ = WeighingReader.Parse("w.csv", text, out Problem? problem);
        Assert.Equal(message, problem!.Message);
    }
}
