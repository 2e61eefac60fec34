using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Starters;
using PushSim.Scenarios.Units;

namespace PushSim.Cli.New;

/// <summary>What a person or the options say of the robot; null for what was left open.</summary>
internal sealed record StarterAnswers(string? Mass, string? Wheels, string? Motor, string? Tyre)
{
    private const double LeastMass = 0.05;
    private const double MostMass = 100.0;

    public bool IsEmpty => Mass is null && Wheels is null && Motor is null && Tyre is null;

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
            bool isRead = MassArgument.TryParse(Mass.Trim(), out mass, out string message);
            wrong = !isRead ? $"mass: {message}" : mass is >= LeastMass and <= MostMass ? "" : $"mass: 50 g to 100 kg, not {Mass}";
        }

        int wheels = StarterDesign.DefaultWheels;
        if (wrong.Length == 0 && Wheels is not null && !(int.TryParse(Wheels.Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out wheels) && wheels is 2 or 4 or 6 or 8))
        {
            wrong = $"wheels: 2, 4, 6 or 8, not \"{Wheels}\"";
        }

        ShelfPart? motor = wrong.Length > 0 ? null : StarterParts.MotorOf(Motor, mass, wheels, out wrong);
        ShelfPart? tyre = wrong.Length > 0 ? null : StarterParts.TyreOf(Tyre, out wrong);
        return motor is null || tyre is null ? null : new StarterDesign(mass, wheels, motor, tyre);
    }

    /// <summary>Asks a person; an empty answer takes what stands in brackets, a wrong one is asked again, the end of the input takes the rest as it stands.</summary>
    public static StarterDesign Ask(TextReader input, TextWriter output)
    {
        output.WriteLine("Four questions; Enter takes what stands in brackets. pushsim shelf lists motors and tyres.");
        var answers = new StarterAnswers("1.2 kg", "4", null, null);
        StarterDesign design = answers.Design(out string _)!;
        (Func<string> Question, Func<string, StarterAnswers> Take)[] steps =
        [
            (() => "Mass, ready to drive [1.2 kg]: ", a => answers with { Mass = a }),
            (() => "Wheels: 2, 4, 6 or 8 [4]: ", a => answers with { Wheels = a }),
            (() => $"Motor, name or class as in \"25 mm\" [{design.Motor.Name}]: ", a => answers with { Motor = a }),
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
