using PushSim.Scenarios;
using Xunit;

namespace PushSim.Cli.Tests.Questions;

/// <summary>The page of questions lists what each shipped scenario asks, in its own words.</summary>
public class QuestionPageTests
{
    private const string Page = "src/docs/questions.md";

    private const int Columns = 108;

    private const string Head = "## By scenario\n";

    [Fact]
    public void The_page_of_questions_is_up_to_date()
    {
        string text = Repository.Page(Page);
        string made = text[..text.IndexOf(Head, StringComparison.Ordinal)] + Head + string.Concat(
            Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal).Select(Entry));
        if (Environment.GetEnvironmentVariable("PUSHSIM_REWRITE") == "1")
        {
            File.WriteAllText(Path.Combine(Repository.Root, Page), made);
        }

        Assert.True(made == Repository.Page(Page), $"{Page} is not what the scenarios ask: run this test once with PUSHSIM_REWRITE=1 and commit it");
    }

    private static string Entry(string name)
    {
        string question = ScenarioReader.Check(Repository.Scenario(name)).Scenario!.Question;
        Assert.NotEqual("", question);
        int at = question.Length > Columns ? question.LastIndexOf(' ', Columns) : -1;
        string broken = at < 0 ? question : $"{question[..at]}\n  {question[(at + 1)..]}";
        string picture = File.Exists(Path.Combine(Repository.Root, "plots", name + ".png")) ? $"\n  ![Its picture](../../plots/{name}.png)\n" : "";
        return $"\n- {broken}\n\n      pushsim run scenarios/{name}.toml\n{picture}";
    }
}
