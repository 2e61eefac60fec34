using Microsoft.Playwright;
using PushSim.Files;
using Xunit;

namespace PushSim.Workbench.Tests.Page;

/// <summary>Seventh use: save, undo and redo, files that change outside.</summary>
public class KeepTests(PageFixture fixture)
{
    private const string Mass = "a.chassis.mass";

    [Fact]
    public async Task Save_changes_the_value_and_nothing_else()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        string[] before = await File.ReadAllLinesAsync(open[OpenPage.Shove]);
        await open.PartAsync("Body");
        await open.WriteAsync(Mass, "1300 g");
        await open.VerdictAsync("mole pushes badger");
        Assert.Equal(before, await File.ReadAllLinesAsync(open[OpenPage.Shove]));
        await open.PressAsync("Save to the file");
        await Assertions.Expect(open.Page.Locator(".tell")).ToContainTextAsync("Saved");
        string[] after = await File.ReadAllLinesAsync(open[OpenPage.Shove]);
        Assert.Equal(["\"chassis.mass\" = \"1300 g\""], after.Except(before));
        Assert.Equal(before.Length, after.Length);
        await Assertions.Expect(open.Page.Locator(".top .file")).ToContainTextAsync("as saved");
    }

    [Fact]
    public async Task A_page_is_made_and_its_path_is_told()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PressAsync("Make a page");
        await Assertions.Expect(open.Page.Locator(".tell")).ToContainTextAsync("page.html");
        Assert.True(File.Exists(open["page.html"]));
    }

    [Fact]
    public async Task Every_step_goes_back_and_forth()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        ILocator field = open.Row(Mass).Locator("input.f").First;
        await open.WriteAsync(Mass, "1200 g");
        await Assertions.Expect(open.Page.Locator(".top .file")).ToContainTextAsync("1 change");
        await open.WriteAsync(Mass, "1350 g");
        await open.VerdictAsync("mole pushes badger");
        ILocator undo = open.Page.Locator(".top button").Filter(new LocatorFilterOptions { HasText = "Undo" });
        await Assertions.Expect(undo).ToContainTextAsync("1350 g");
        await undo.ClickAsync();
        await Assertions.Expect(field).ToHaveValueAsync("1200 g");
        await undo.ClickAsync();
        await Assertions.Expect(field).ToHaveValueAsync("1100 g");
        await Assertions.Expect(undo).ToBeDisabledAsync();
        await open.Page.Locator(".top button").Filter(new LocatorFilterOptions { HasText = "Redo" }).ClickAsync();
        await Assertions.Expect(field).ToHaveValueAsync("1200 g");
    }

    [Fact]
    public async Task A_file_changed_outside_is_read_again()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        await File.WriteAllTextAsync(open[OpenPage.Shove], (await File.ReadAllTextAsync(open[OpenPage.Shove])).Replace("1100 g", "1350 g", StringComparison.Ordinal));
        await open.VerdictAsync("mole pushes badger");
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).ToHaveValueAsync("1350 g");
        await Assertions.Expect(open.Page.Locator(".tell")).ToContainTextAsync("changed outside");
    }

    [Fact]
    public async Task Two_changes_of_one_file_are_shown_side_by_side_and_nothing_is_lost_unasked()
    {
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        await open.PartAsync("Body");
        await open.WriteAsync(Mass, "1300 g");
        await open.VerdictAsync("mole pushes badger");
        await File.WriteAllTextAsync(open[OpenPage.Shove], (await File.ReadAllTextAsync(open[OpenPage.Shove])).Replace("1900 g", "2100 g", StringComparison.Ordinal));
        ILocator dialog = open.Page.GetByRole(AriaRole.Dialog);
        await Assertions.Expect(dialog.Locator(".diff")).ToContainTextAsync(["1300 g", "1900 g", "1100 g", "2100 g"]);
        Assert.Empty(await open.ViolationsAsync());
        await open.KeepAsync("both");
        await open.PressAsync("Take the file’s, drop mine");
        await Assertions.Expect(dialog).ToHaveCountAsync(0);
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).ToHaveValueAsync("1100 g");
        Assert.Contains("2100 g", await File.ReadAllTextAsync(open[OpenPage.Shove]), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_full_disk_is_told_and_costs_neither_file_nor_change()
    {
        // the server's threads start here, so the door to the disk is watched for them
        var disk = new FullDisk();
        Disk.Watch(disk);
        await using OpenPage open = await OpenPage.StartAsync(fixture);
        Disk.Watch(null);
        string before = await File.ReadAllTextAsync(open[OpenPage.Shove]);
        await open.PartAsync("Body");
        await open.WriteAsync(Mass, "1300 g");
        await open.VerdictAsync("mole pushes badger");
        disk.IsFull = true;
        await open.PressAsync("Save to the file");
        await Assertions.Expect(open.Page.Locator(".tell.bad")).ToContainTextAsync("full");
        Assert.True(disk.Refused > 0);
        Assert.Equal(before, await File.ReadAllTextAsync(open[OpenPage.Shove]));
        await Assertions.Expect(open.Page.Locator(".top .file")).ToContainTextAsync("1 change not saved");
        await Assertions.Expect(open.Row(Mass).Locator("input.f").First).ToHaveValueAsync("1300 g");
        disk.IsFull = false;
        await open.PressAsync("Save to the file");
        await Assertions.Expect(open.Page.Locator(".top .file")).ToContainTextAsync("as saved");
    }
}
