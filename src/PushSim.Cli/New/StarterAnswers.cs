using System.Text.RegularExpressions;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Starters;
using PushSim.Scenarios.Units;

namespace PushSim.Cli.New;

/// <summary>What a person or the options say of the robot; null for what was left open.</summary>
internal sealed partial record StarterAnswers(string? Mass, string? Wheels, string? Motor, string? Tyre)
{
    // Below it a bare number is kilograms, else grams [1].
    private const double MostBareKilograms = 30.0;

    private const double LeastMass = 0.05;
    private const double MostMass = 100.0;

    /// <summary>Name of the robot; null: that of the starter.</summary>
    public string? Name { get; init; }

    /// <summary>What was read otherwise than it stands there, in sentences.</summary>
    /// <param name="design">What came of it; null for the plain starter.</param>
    public IReadOnlyList<string> Notes(StarterDesign? design) =>
    [
        .. Mass is string m && Bare(m) is string read ? new[] { $"mass {m.Trim()} is taken as {read}" } : [],
        .. Taken("motor", Motor, design?.Motor), .. Taken("tyre", Tyre, design?.Tyre),
    ];

    public bool IsEmpty => Name is null && Mass is null && Wheels is null && Motor is null && Tyre is null;

    /// <summary>The robot; null for the plain starter, if nothing was said, or if an answer is wrong.</summary>
    /// <param name="wrong">What is wrong; empty if nothing is.</param>
    public StarterDesign? Design(out string wrong)
    {
        wrong = "";
        if (IsEmpty)
        {
            return null;
        }

        double mass = StarterDesign.PlainMass;
        if (Mass is not null)
        {
            bool isRead = MassArgument.TryParse(Bare(Mass) ?? Mass.Trim(), out mass, out string message);
            wrong = !isRead ? $"mass: {message}" : mass is >= LeastMass and <= MostMass ? "" : $"mass: 50 g to 100 kg, not {Mass}";
        }

        int wheels = StarterDesign.DefaultWheels;
        if (wrong.Length == 0 && Wheels is not null && !(int.TryParse(Wheels.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out wheels) && wheels is 2 or 4 or 6 or 8))
        {
            wrong = $"wheels: 2, 4, 6 or 8, not \"{Wheels}\"";
        }

        if (wrong.Length == 0 && Name is not null && !Words().IsMatch(Name))
        {
            wrong = "name: letters, digits, blanks, - and _, 60 at most";
        }

        ShopMotor? shop = wrong.Length > 0 || Motor is null ? null : ShopMotor.Of(Motor, out wrong);
        ShelfPart? motor = wrong.Length > 0 ? null : shop is not null ? StarterParts.MotorOf(shop, mass) : StarterParts.MotorOf(Motor, mass, wheels, out wrong);
        ShelfPart? tyre = wrong.Length > 0 ? null : StarterParts.TyreOf(Tyre, out wrong);
        return motor is null || tyre is null ? null : new StarterDesign(mass, wheels, motor, tyre) { Shop = shop, Name = Name?.Trim() ?? "starter" };
    }

    private static string[] Taken(string what, string? said, ShelfPart? part) =>
        said is null || part is null || part.Names.Contains(said.Trim(), StringComparer.OrdinalIgnoreCase) ? [] : [$"{what} \"{said.Trim()}\": {part.Name} of the shelf"];

    // a number with a decimal comma, or without its unit, as people write it; null where it stands as it is
    private static string? Bare(string mass)
    {
        string text = DecimalComma().Replace(mass.Trim(), "$1.$2");
        bool isBare = double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number);
        return isBare ? text + (number < MostBareKilograms ? " kg" : " g") : text == mass.Trim() ? null : text;
    }

    [GeneratedRegex(@"^(\d+),(\d+)")]
    private static partial Regex DecimalComma();

    [GeneratedRegex(@"^[\p{L}\d][\p{L}\d _-]{0,59}$")]
    private static partial Regex Words();

    /// <summary>Asks a person; an empty answer takes what stands in brackets, a wrong one is asked again, the end of the input takes the rest as it stands.</summary>
    public static StarterDesign Ask(TextReader input, TextWriter output)
    {
        output.WriteLine("Five questions; Enter takes what stands in brackets. pushsim shelf lists motors and tyres.");
        var answers = new StarterAnswers("1.2 kg", "4", null, null);
        StarterDesign design = answers.Design(out string _)!;
        (Func<string> Question, Func<string, StarterAnswers> Take)[] steps =
        [
            (() => "Name of the robot [starter]: ", a => answers with { Name = a }),
            (() => "Mass, ready to drive [1.2 kg]: ", a => answers with { Mass = a }),
            (() => "Wheels: 2, 4, 6 or 8 [4]: ", a => answers with { Wheels = a }),
            (() => $"Motor, a class as in \"25 mm\", or its shop's words as in \"25 mm, 12 V, 200 rpm\" [{design.Motor.Name}]: ", a => answers with { Motor = a }),
            (() => $"Tyre material [{design.Tyre.Name}]: ", a => answers with { Tyre = a }),
        ];
        foreach ((Func<string> question, Func<string, StarterAnswers> take) in steps)
        {
            while (true)
            {
                output.Write(question());
                string? line = input.ReadLine();
                if (string.IsNullOrWhiteSpace(line))
                {
                    break;
                }

                StarterAnswers next = take(line.Trim());
                if (next.Design(out string wrong) is StarterDesign found)
                {
                    (answers, design) = (next, found);
                    break;
                }

                output.WriteLine(PlainText.Of(wrong));
            }
        }

        return design;
    }
}
