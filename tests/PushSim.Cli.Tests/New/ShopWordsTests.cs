using PushSim.Scenarios.Starters;
using Xunit;

namespace PushSim.Cli.Tests.New;

/// <summary>`new` takes what builders say: masses without a unit, words of a shop's page, words of a material. Shop pages are invented.</summary>
public class ShopWordsTests
{
    [Theory]
    [InlineData("1.2", "mass 1.2 is taken as 1.2 kg", "1200 g")]
    [InlineData("1,2 kg", "mass 1,2 kg is taken as 1.2 kg", "1200 g")]
    [InlineData("450", "mass 450 is taken as 450 g", "450 g")]
    public void A_mass_is_read_as_people_write_it(string mass, string note, string written)
    {
        (Cli cli, string robot) = New("--mass", mass, "--name", "digger");
        Assert.Contains(note, cli.Output);
        Assert.Contains($"mass = \"{written}\"", robot);
        Assert.Contains("name = \"digger\"", robot);
    }

    // speed and torque stand in the file as the shop has them; what is missing is guessed and says so
    [Theory]
    [InlineData("25 mm gearmotor, 12V, 200 rpm, 8 kgf·cm stall, 2,2 A", "output_speed = \"200 rpm\"", "stall_current = \"2.2 A\"\n", "25 mm")]
    [InlineData("37mm 12V 330rpm 5 kg.cm", "output_stall_torque = \"5 kg.cm\"", "# guessed:", "37 mm")]
    [InlineData("16 mm 6 V 500 rpm 30:1", "gear_ratio = 30\n", "voltage = \"6 V\"", "16 mm")]
    [InlineData("200 rpm 12V", "gear_ratio = 51", "for 200 rpm with the shelf's winding", "25 mm")]
    public void A_shop_page_makes_a_motor(string words, string line, string other, string shelf)
    {
        (Cli _, string robot) = New("--mass", "1.2kg", "--motor", words);
        Assert.Contains(line, robot);
        Assert.Contains(other, robot);
        Assert.Contains($"shelf = \"{shelf}", robot);
    }

    // computed here: 0.4903 N m at 34.56 rad/s over 12 V and 73 %, and 0.3 A
    [Fact]
    public void A_stall_current_is_guessed_from_torque_speed_and_voltage() => Assert.Equal(2.2343, ShopMotor.Of("37mm 12V 330rpm 5 kgf cm", out _)!.Stall(0.3)!.Value, 3);

    [Theory]
    [InlineData("shore 30A silicone", "cast silicone 30A")]
    [InlineData("silicone rubber", "cast silicone")]
    public void A_material_is_found_by_builders_words(string words, string shelf)
    {
        (Cli cli, string robot) = New("--mass", "1.2kg", "--tyre", words);
        Assert.Contains($"shelf = \"{shelf}", robot);
        Assert.True(cli.Output.Contains("of the shelf", StringComparison.Ordinal) || words == "silicone rubber");
    }

    [Theory]
    [InlineData("--motor", "16mm 6V 500rpm wobbly", "\"wobbly\" is not understood")]
    [InlineData("--name", "a\"b", "name: letters")]
    [InlineData("--mass", "1,2,3 kg", "mass:")]
    public void What_is_not_understood_is_told(string option, string value, string said)
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("new", "--kind", "shove", option, value, "--out", scratch["x"]);
        Assert.Equal(PushSim.Cli.Shared.ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains(said, cli.Error);
    }

    // the files that come of it are right
    private static (Cli Cli, string Robot) New(params string[] args)
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run(["new", "--kind", "shove", .. args, "--out", scratch["x"]]);
        Assert.True(cli.Code == 0, cli.Error);
        Assert.Equal(0, Cli.Run("check", scratch["x"] + "/shove.toml").Code);
        return (cli, File.ReadAllText(scratch["x"] + "/robot.toml"));
    }
}
