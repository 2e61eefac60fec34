using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>A small right robot and scenario in a folder of their own, to be broken one line at a time.</summary>
internal sealed class SmallFiles : IDisposable
{
    // line numbers are counted in the tests: do not reflow
    public const string Robot = """
        name = "shrew"
        [chassis]
        mass = "800 g"
        length = "120 mm"
        width = "100 mm"
        height = "40 mm"
        centre_of_mass = { x = "0 mm", height = "20 mm" }
        [[tyre]]
        name = "foam"
        static_friction = "1.0 ± 0.1"
        kinetic_friction = 0.8
        body_stiffness = "2 N/mm"
        body_damping = "2 N s/m"
        tread_mass = "4 g"
        vertical_stiffness = "8 N/mm"
        wear = "200 mm3"
        [[wheel]]
        name = "left"
        x = "0 mm"
        y = "50 mm"
        diameter = "50 mm"
        tyre = "foam"
        mass = "20 g"
        [[wheel]]
        name = "right"
        x = "0 mm"
        y = "-50 mm"
        diameter = "50 mm"
        tyre = "foam"
        inertia = "60 g cm2"
        [[wheel]]
        name = "ball front"
        x = "50 mm"
        y = "0 mm"
        diameter = "10 mm"
        tyre = "foam"
        skid = true
        [[wheel]]
        name = "ball rear"
        x = "-50 mm"
        y = "0 mm"
        diameter = "10 mm"
        tyre = "foam"
        skid = true
        [[motor]]
        name = "small"
        voltage = "12 V"
        no_load_speed = "500 rpm"
        no_load_current = "0.1 A"
        stall_current = "3 A"
        gear_ratio = 30
        rotor_inertia = "2 g cm2"
        [[drive]]
        name = "port"
        wheels = ["left"]
        motors = ["small"]
        gear_efficiency = "75 %"
        [[drive]]
        name = "starboard"
        wheels = ["right"]
        motors = ["small"]
        gear_efficiency = "75 %"
        [[controller]]
        name = "a"
        side = "left"
        drives = ["port"]
        current_limit = "5 A"
        [[controller]]
        name = "b"
        side = "right"
        drives = ["starboard/1"]
        [battery]
        cells = 3
        capacity = "450 mAh"
        resistance = "150 mohm"

        """;

    public const string Scenario = """
        question = "Does it move?"
        robot = "shrew.toml"
        [floor]
        friction = 1.0
        slope_x = "5 deg"
        [[floor.patch]]
        min_x = "1 m"
        max_x = "2 m"
        min_y = "-1 m"
        max_y = "1 m"
        friction = 0.5
        [manoeuvre]
        kind = "reversal"
        start = "0.1 s"
        reverse_at = "1 s"
        end = "2 s"
        [numerics]
        tolerance = 0.001

        """;

    public SmallFiles(string? robot = Robot, string? scenario = Scenario)
    {
        Folder = Directory.CreateTempSubdirectory("pushsim-reader-").FullName;
        if (robot is not null)
        {
            File.WriteAllText(Path.Combine(Folder, "shrew.toml"), robot);
        }

        File.WriteAllText(ScenarioPath, scenario);
    }

    public string Folder { get; }

    public string ScenarioPath => Path.Combine(Folder, "move.toml");

    public string RobotPath => Path.Combine(Folder, "shrew.toml");

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    /// <summary>The text with one piece replaced; the piece must be there.</summary>
    public static string With(string text, string old, string by)
    {
        int at = text.IndexOf(old, StringComparison.Ordinal);
        Assert.True(at >= 0, $"'{old}' is not in the small file");
        return text[..at] + by + text[(at + old.Length)..];
    }
}
