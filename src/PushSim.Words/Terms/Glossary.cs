namespace PushSim.Words.Terms;

/// <summary>Words of answers, pictures and pages, each in a sentence or two: `explain` knows them, and pages list them.</summary>
public static class Glossary
{
    /// <summary>All words, in the order of the alphabet.</summary>
    public static IReadOnlyList<(string Word, string Meaning)> All { get; } =
    [
        ("balance point", "The point on which the robot would balance: its centre of mass."),
        ("breakaway", "The moment at which tyres that held let go and begin to slide. The force is highest there."),
        ("chatter", "A tyre that sticks and slips many times a second. It buzzes, wears and shakes the robot."),
        ("contest", "The draws of many matches, told by a label and a seed. The same contest gives the same matches."),
        ("current limit", "The current at which a controller stops giving more. It caps the torque of its motors."),
        ("damping", "What takes the energy out of a swing. More of it makes tyres quieter."),
        ("doubt", "How much the answer would change if an input were another one within its tolerance."),
        ("gf", "Gram-force, what a scale shows: 1000 gf are 9.81 N."),
        ("grip", "The force that a tyre holds sideways or lengthwise, as a share of the load on it: its friction."),
        ("ground", "How far the place where two robots touch moves. Who is pushed back gives ground."),
        ("interval", "The range that holds the true value in 95 of 100 such tests."),
        ("limit", "What gives out first: tyres, motors, controllers or battery. It binds."),
        ("line", "Half a metre behind the start of a robot. A robot whose middle is pushed over it has lost."),
        ("margin", "The ground between winner and loser of a shove."),
        ("plateau", "The steady force after the breakaway, while the tyres slide."),
        ("scrub", "The sideways sliding of tyres when a robot turns. It costs current and rubber."),
        ("slip", "How much faster the tread moves than the floor under it."),
        ("stalemate", "A shove in which nobody gains 20 mm until the time is up."),
        ("stall", "A motor that is held still. It draws its highest current and heats fast."),
        ("steady pull", "The force that a robot holds on a tether, after jerks and peaks have gone."),
        ("track", "The distance between the left and the right wheels."),
        ("wheelbase", "The distance between the front and the rear wheels."),
    ];

    /// <summary>The meaning of a word, in the plural too; null for a word that is not told.</summary>
    public static (string Word, string Meaning)? Find(string word)
    {
        string plain = word.Trim().Replace('_', ' ').Replace('-', ' ');
        int at = All.ToList().FindIndex(g => g.Word.Equals(plain, StringComparison.OrdinalIgnoreCase) || (g.Word + "s").Equals(plain, StringComparison.OrdinalIgnoreCase));
        return at < 0 ? null : All[at];
    }
}
