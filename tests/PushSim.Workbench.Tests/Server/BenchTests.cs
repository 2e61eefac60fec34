using System.Net;
using System.Text;
using System.Text.Json;
using PushSim.Scenarios.Studies;
using PushSim.Words.Fits;
using Xunit;

namespace PushSim.Workbench.Tests.Server;

/// <summary>Logs that are dropped on the page say what the command `fit` says.</summary>
public class BenchTests
{
    [Fact]
    public async Task A_log_is_fitted_and_its_grip_goes_into_the_robot()
    {
        await using OpenServer open = await OpenServer.StartAsync("pull-test.toml");
        await open.AnswerAsync(1);
        string log = open["logs/soft-tyre.csv"];
        using HttpResponseMessage answer = await open.Client.PostAsync("/api/log?name=soft.csv", new StringContent(File.ReadAllText(log), Encoding.UTF8, "text/csv"));
        string text = await answer.Content.ReadAsStringAsync();
        Assert.True(answer.StatusCode == HttpStatusCode.OK, text);
        JsonElement card = JsonDocument.Parse(text).RootElement;
        FitResult fit = LogFit.Of(new FitRequest { Files = [log], RobotFile = open["pull-test.toml"], Tyre = "soft" });
        Assert.Equal(FitCard.Of(fit.Fits, FitWords.Verdict(fit.Fits, fit.Comparison), fit.Comparison).Answer, card.GetProperty("sentence").GetString());
        Assert.Equal(fit.Fits[0].Pulls, card.GetProperty("pulls").GetArrayLength());
        JsonElement tyre = card.GetProperty("tyres")[0];
        Assert.Equal("a.tyre.soft.kinetic_friction", tyre.GetProperty("key").GetString());
        await open.AnswerAsync(await open.PostAsync("/api/use", JsonSerializer.Serialize(new { key = tyre.GetProperty("key").GetString(), value = tyre.GetProperty("value").GetString() })));
        JsonElement row = StateTests.Row(await open.StateAsync(), "a.tyre.soft.kinetic_friction");
        Assert.Equal(fit.Fits[0].KineticFriction!.Value.Value, row.GetProperty("value").GetDouble(), 0.0006);
        Assert.True(row.GetProperty("changed").GetBoolean());
    }

    [Fact]
    public async Task What_is_no_log_is_refused_in_words()
    {
        await using OpenServer open = await OpenServer.StartAsync("pull-test.toml");
        using HttpResponseMessage answer = await open.Client.PostAsync("/api/log?name=x.csv", new StringContent("not a log", Encoding.UTF8, "text/csv"));
        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.NotEqual("", JsonDocument.Parse(await answer.Content.ReadAsStringAsync()).RootElement.GetProperty("message").GetString());
    }
}
