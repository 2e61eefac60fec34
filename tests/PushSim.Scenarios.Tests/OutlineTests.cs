using PushSim.Contact;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Every check of an outline: a wrong file that trips it, and a right one just this side of it. Numbers are computed here.</summary>
public class OutlineTests
{
    // counter-clockwise from the front right, 100 mm wide; {0} is how far the front bulges [mm]
    private const string Bulging = "50 -50, {0} 0, 50 50, -50 50, -50 -50";

    // last line of the small robot
    private static readonly int s_last = SmallFiles.Robot.Split('\n').Length - 1;

    private static string Corners(string places) => string.Concat(places.Split(", ").Select(p => p.Split(' ')).Select(p => $"[[outline.corner]]\nx = \"{p[0]} mm\"\ny = \"{p[1]} mm\"\n"));

    private static string Around(int corners, int step = 1, double sense = 1.0) => string.Join(", ", Enumerable.Range(0, corners)
        .Select(i => sense * step * i * Math.Tau / corners)
        .Select(a => FormattableString.Invariant($"{50.0 * Math.Cos(a):F6} {50.0 * Math.Sin(a):F6}")));

    private static ReadResult Read(string outline)
    {
        using var files = new SmallFiles(robot: SmallFiles.Robot + outline);
        return ScenarioReader.Read(files.ScenarioPath);
    }

    private static OutlineSettings Right(string outline)
    {
        ReadResult result = Read(outline);
        Assert.DoesNotContain(result.Problems, p => p.Severity == Severity.Error);
        return StandingHeights.AsMeasured(result.Scenario!.Robot).OutlineOrBox;
    }

    // the line is counted from the first one below the small robot
    private static void Wrong(string outline, int line, string message, string help)
    {
        ReadResult result = Read(outline);
        Assert.Null(result.Scenario);
        Problem problem = Assert.Single(result.Problems, p => p.Severity == Severity.Error);
        Assert.Equal(s_last + line, problem.Line);
        Assert.Contains(message, problem.Message);
        Assert.Contains(help, problem.Help);
    }

    [Theory]
    [InlineData("clearance = \"5 mm\"\ntop = \"5 mm\"\n", 3, "the outline's top, 5.0 mm, is not above its clearance, 5.0 mm")]
    [InlineData("top = \"3 mm\"\n", 2, "the outline's top, 3.0 mm, is not above its clearance, 4.0 mm")]
    [InlineData("clearance = \"40 mm\"\n", 1, "the outline's top, 40.0 mm, is not above its clearance, 40.0 mm")]
    public void A_top_must_lie_above_the_clearance(string keys, int line, string message) => Wrong("[outline]\n" + keys, line, message, "raise top or lower clearance");

    [Theory]
    [InlineData("clearance = \"5 mm\"\ntop = \"5.01 mm\"\n", 5.0, 5.01)]
    [InlineData("top = \"4.01 mm\"\n", 4.0, 4.01)]
    [InlineData("clearance = \"39.99 mm\"\n", 39.99, 40.0)]
    public void A_top_just_above_the_clearance_is_right(string keys, double clearance, double top)
    {
        OutlineSettings outline = Right("[outline]\n" + keys);
        Assert.Equal([(0.06, -0.05), (0.06, 0.05), (-0.06, 0.05), (-0.06, -0.05)], outline.Corners);
        Assert.All(outline.Faces, f => Assert.Equal((Math.Round(1e-3 * clearance, 12), Math.Round(1e-3 * top, 12), null), (Math.Round(f.LowerEdge, 12), Math.Round(f.UpperEdge, 12), f.RampAngle)));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(9)]
    public void Too_few_and_too_many_corners(int count) => Wrong(Corners(Around(count)), 1, $"{count} corners, but an outline has 3 to 8", "leave corner out");

    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(8)]
    public void Three_to_eight_corners_are_right(int count)
    {
        OutlineSettings outline = Right(Corners(Around(count)));
        Assert.Equal(count, outline.Corners.Count);
        Assert.Equal(count, outline.Faces.Count);
        Assert.Equal((0.05, 0.0), outline.Corners[0]);
        Assert.True(outline.Corners[1].Y > 0.0);
    }

    // Three corners in a row count as straight below 0.01 mm2: with 50 mm to either neighbour, below a bulge of 1e-4 mm.
    [Theory]
    [InlineData("49", true)]
    [InlineData("50", true)]
    [InlineData("50.00009", true)]
    [InlineData("50.00011", false)]
    [InlineData("60", false)]
    public void Three_corners_in_a_row_must_not_be_straight(string bulge, bool isWrong)
    {
        string corners = Corners(string.Format(System.Globalization.CultureInfo.InvariantCulture, Bulging, bulge));
        if (isWrong)
        {
            Wrong(corners, 4, "the outline does not turn left at this corner", "counter-clockwise");
        }
        else
        {
            Assert.Equal(5, Right(corners).Corners.Count);
        }
    }

    // The first corner that is not turned left at: counted from the second on, the first comes last.
    [Theory]
    [InlineData("50 -50, -50 -50, -50 50, 50 50", 2)] // clockwise
    [InlineData("50 -50, 50 -50, 50 50, -50 50", 2)] // one twice
    [InlineData("50 -50, 50 50, 50 50, -50 50", 2)] // another twice
    [InlineData("50 -50, 50 50, -50 50, 50 -50", 4)] // the last on the first
    [InlineData("50 -50, 50 50, 0 0, -50 50, -50 -50", 3)] // a dent
    [InlineData("50 -50, -50 50, 50 50, -50 -50", 2)] // crossing in the middle
    [InlineData("0 0, 50 -50, 50 50, -50 50, -50 -50, 40 -45", 1)] // the first a dent
    [InlineData("50 -50, 50 50, 50 80", 2)] // all in one line
    public void An_outline_turns_left_everywhere(string places, int corner) => Wrong(Corners(places), (3 * corner) - 2, "the outline does not turn left at this corner", "counter-clockwise");

    // A star turns left at every corner and goes round two or three times.
    [Theory]
    [InlineData(5, 2)]
    [InlineData(7, 2)]
    [InlineData(7, 3)]
    [InlineData(8, 3)]
    public void A_star_is_no_outline(int corners, int step) => Wrong(Corners(Around(corners, step)), 1, "the outline crosses itself", "in the order");

    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    public void A_mirrored_outline_runs_the_wrong_way(int corners)
    {
        Wrong(Corners(Around(corners, 1, -1.0)), 4, "the outline does not turn left at this corner", "counter-clockwise");
        Assert.Equal(corners, Right(Corners(string.Join(", ", Around(corners, 1, -1.0).Split(", ").Reverse()))).Corners.Count);
    }

    [Theory]
    [InlineData("tip = \"5 mm\"\ntop = \"5 mm\"\n", 4, "the ramp's top, 5.0 mm, is not above its tip, 5.0 mm")]
    [InlineData("tip = \"40 mm\"\n", 1, "the ramp's top, 40.0 mm, is not above its tip, 40.0 mm")]
    public void A_ramps_top_must_lie_above_its_tip(string keys, int line, string message) => Wrong("[[outline.ramp]]\nside = \"front\"\n" + keys + "angle = \"30 deg\"\n", line, message, "raise top or lower tip");

    [Theory]
    [InlineData("tip = \"5 mm\"\ntop = \"5.01 mm\"\n", 0.005, 0.00501)]
    [InlineData("tip = \"39.99 mm\"\n", 0.03999, 0.04)]
    [InlineData("tip = \"0 mm\"\n", 0.0, 0.04)]
    public void A_ramps_top_just_above_its_tip_is_right(string keys, double tip, double top)
    {
        OutlineSettings outline = Right("[[outline.ramp]]\nside = \"front\"\n" + keys + "angle = \"30 deg\"\n");
        Assert.Equal(tip, outline.Faces[0].LowerEdge, 1e-12);
        Assert.Equal(top, outline.Faces[0].UpperEdge, 1e-12);
        Assert.Equal(Math.PI / 6.0, outline.Faces[0].RampAngle!.Value, 1e-12);
    }

    // In the box the faces are front, left, rear, right, whatever corner it is given from. The last outline has a narrow nose, longer faces beside it.
    [Theory]
    [InlineData("", "front", 0)]
    [InlineData("", "left", 1)]
    [InlineData("", "rear", 2)]
    [InlineData("", "right", 3)]
    [InlineData("-60 50, -60 -50, 60 -50, 60 50", "front", 2)]
    [InlineData("-60 50, -60 -50, 60 -50, 60 50", "left", 3)]
    [InlineData("-60 50, -60 -50, 60 -50, 60 50", "rear", 0)]
    [InlineData("-60 50, -60 -50, 60 -50, 60 50", "right", 1)]
    [InlineData("60 -10, 60 10, 0 60, -60 0, 0 -60", "front", 0)] // 20 mm long, but straight ahead
    [InlineData("60 -10, 60 10, 0 60, -60 0, 0 -60", "left", 1)] // cosine 60/78.1 = 0.77 against 0.71 of the next
    [InlineData("60 -10, 60 10, 0 60, -60 0, 0 -60", "right", 4)]
    public void A_ramp_is_on_the_face_that_looks_most_to_its_side(string places, string side, int face)
    {
        OutlineSettings outline = Right((places.Length > 0 ? Corners(places) : "") + $"[[outline.ramp]]\nside = \"{side}\"\ntip = \"1 mm\"\nangle = \"25 deg\"\n");
        Assert.Equal([face], Enumerable.Range(0, outline.Faces.Count).Where(i => outline.Faces[i].RampAngle is not null));
        Assert.All(outline.Faces.Where(f => f.RampAngle is null), f => Assert.Equal((0.004, 0.04), (Math.Round(f.LowerEdge, 12), Math.Round(f.UpperEdge, 12))));
    }

    // all four sides of a box; two of one side, or two sides of a triangle that are one face, are too many
    [Fact]
    public void A_face_has_one_ramp()
    {
        static string Ramps(params string[] sides) => string.Concat(sides.Select(s => $"[[outline.ramp]]\nside = \"{s}\"\ntip = \"1 mm\"\nangle = \"25 deg\"\n"));
        const string Triangle = "60 -50, 0 60, -60 -50";
        Assert.All(Right(Ramps("front", "rear", "left", "right")).Faces, f => Assert.NotNull(f.RampAngle));
        Assert.Equal(3, Right(Corners(Triangle) + Ramps("front", "rear", "right")).Faces.Count(f => f.RampAngle is not null));
        Wrong(Ramps("front", "front"), 6, "this face already has a ramp", "each side one ramp");
        Wrong(Corners(Triangle) + Ramps("front", "left"), 15, "this face already has a ramp", "each side one ramp");
    }

    // one complaint, not a second one about a face that is not there
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void A_ramp_on_too_few_corners_is_not_looked_for(int corners)
    {
        const string Ramp = "[[outline.ramp]]\nside = \"front\"\ntip = \"1 mm\"\nangle = \"25 deg\"\n";
        if (corners > 0)
        {
            Wrong(Corners(Around(corners)) + Ramp, 1, $"{corners} corners", "leave corner out");
        }
        else
        {
            Wrong(Ramp.Replace("front", "nose"), 2, "\"nose\" is no side", "front");
        }
    }

    [Theory]
    [InlineData("angle = \"2.4 deg\"", false)]
    [InlineData("angle = \"2.5 deg\"", true)]
    [InlineData("angle = \"86 deg\"", true)]
    [InlineData("angle = \"86.1 deg\"", false)]
    public void A_ramp_is_neither_level_nor_upright(string angle, bool isRight)
    {
        string outline = $"[[outline.ramp]]\nside = \"front\"\ntip = \"1 mm\"\n{angle}\n";
        if (isRight)
        {
            Assert.NotNull(Right(outline).Faces[0].RampAngle);
        }
        else
        {
            Wrong(outline, 4, "outside the allowed range", "2.5 deg to 86 deg");
        }
    }
}
