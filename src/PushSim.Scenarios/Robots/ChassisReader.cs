using PushSim.Chassis;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Tyres;

namespace PushSim.Scenarios.Robots;

/// <summary>Reads a robot's [chassis]: mass and centre of mass as given, else from scale readings and a tilt test.</summary>
internal sealed class ChassisReader
{
    // Kitchen scales and rounding; more is a contradiction, as a share [1].
    private const double MostMismatch = 0.02;

    // The tilt test is much less exact than the scale, as a share [1].
    private const double MostHeightMismatch = 0.2;

    private readonly Section _s;
    private readonly IReadOnlyList<WheelSettings> _wheels;

    private ChassisReader(Section section, IReadOnlyList<WheelSettings> wheels)
    {
        _s = section;
        _wheels = wheels;
    }

    /// <summary>The chassis of a robot with these wheels.</summary>
    public static ChassisSettings Read(Section s, IReadOnlyList<WheelSettings> wheels) => new ChassisReader(s, wheels).Read();

    private ChassisSettings Read()
    {
        Section? centre = _s.Table("centre_of_mass");
        Section? down = _s.Table("downforce");
        double? givenMass = _s.Number("mass");
        ScalePair? along = Pair("front_scale_weight", "rear_scale_weight", givenMass, w => w.X, "across");
        ScalePair? across = Pair("left_scale_weight", "right_scale_weight", givenMass ?? along?.Sum, w => w.Y, "along");
        double mass = Mass(givenMass, along, across);
        double height = _s.Required("height");
        double x = Centre(centre, "x", along);
        double y = Centre(centre, "y", across);
        ChassisSettings chassis = _s.Fill(
            Blank.Chassis with { Mass = mass, Height = height, CentreOfMassX = x, CentreOfMassY = y },
            ("centre_of_mass", c => c with { CentreOfMassHeight = CentreHeight(centre, along?.Sum ?? mass, along?.Centre ?? x, height) }));
        chassis = down?.Fill(chassis with { Downforce = double.NaN }) ?? chassis;
        if (chassis.RollInertia is null || chassis.PitchInertia is null || chassis.YawInertia is null)
        {
            _s.Context.Note("moments of inertia that are not given are estimated from the body box (a uniform block)", "30 %, estimate: mass at the ends or in the middle shifts them");
        }

        return chassis;
    }

    // Two readings of the scale, or one and the mass; null if there are none or they are wrong.
    private ScalePair? Pair(string firstKey, string secondKey, double? mass, Func<WheelSettings, double> place, string other)
    {
        double? first = _s.Number(firstKey);
        double? second = _s.Number(secondKey);
        if ((first is null && second is null) || IsWrong(first, second, mass) || _wheels.Count == 0)
        {
            return null;
        }

        (string given, string lacks) = first is null ? (secondKey, firstKey) : (firstKey, secondKey);
        if ((first is null || second is null) && mass is null)
        {
            _s.Context.Error(_s.PlaceOf(given), $"\"{given}\" without \"{lacks}\" or \"mass\" gives no mass", $"add {lacks} = \"620 g\" or mass = \"1360 g\"");
            return null;
        }

        double firstWeight = first ?? (mass - second)!.Value;
        double secondWeight = second ?? (mass - first)!.Value;
        if (firstWeight < 0.0 || secondWeight < 0.0 || firstWeight + secondWeight <= 0.0)
        {
            _s.Context.Error(_s.PlaceOf(given), FormattableString.Invariant($"\"{given}\" is {1e3 * (first ?? second):G4} g of {1e3 * (mass ?? (first + second)):G4} g in all"), "a part cannot weigh more than the whole");
            return null;
        }

        double most = _wheels.Max(place);
        double least = _wheels.Min(place);
        if (!(most > least))
        {
            _s.Context.Error(_s.PlaceOf(given), $"\"{given}\": all wheels stand in one line {other}", "scale weights need two axles");
            return null;
        }

        return new ScalePair(firstWeight, secondWeight, MassFromScale.Centre(firstWeight, secondWeight, most, least), $"{firstKey} and {secondKey}", most - least, _s.PlaceOf(given));
    }

    private double Mass(double? given, ScalePair? along, ScalePair? across)
    {
        if (along is not null && across is not null)
        {
            CompareMass(across, along.Sum, along.Keys + " sum to");
        }

        if (given is double mass)
        {
            foreach (ScalePair pair in new[] { along, across }.OfType<ScalePair>())
            {
                CompareMass(pair, mass, "\"mass\" is");
            }

            return mass;
        }

        if ((along ?? across) is ScalePair scale)
        {
            _s.Context.Note(FormattableString.Invariant($"chassis: mass {1e3 * scale.Sum:G5} g, the sum of {scale.Keys}"), "that of the scale, twice");
            return scale.Sum;
        }

        bool isSaid = _s.Has("front_scale_weight") || _s.Has("rear_scale_weight") || _s.Has("left_scale_weight") || _s.Has("right_scale_weight");
        if (!isSaid)
        {
            _s.Missing(["mass", "front_scale_weight", "rear_scale_weight"], "missing \"mass\" in chassis", "add mass = \"1360 g\" (mass of the whole robot with wheels and battery), or front_scale_weight and rear_scale_weight");
        }

        return double.NaN;
    }

    private void CompareMass(ScalePair pair, double mass, string what)
    {
        if (Math.Abs(pair.Sum - mass) > MostMismatch * mass)
        {
            _s.Context.Warning(pair.Place, FormattableString.Invariant($"{pair.Keys} sum to {1e3 * pair.Sum:G5} g, but {what} {1e3 * mass:G5} g"), "weigh again; the robot must stand level, and nothing else may touch it");
        }
    }

    private double Centre(Section? section, string axis, ScalePair? pair)
    {
        double? given = section?.Number(axis);
        if (pair is null)
        {
            return given ?? 0.0;
        }

        if (given is double x)
        {
            if (Math.Abs(x - pair.Centre) > MostMismatch * pair.Span)
            {
                _s.Context.Warning(pair.Place, FormattableString.Invariant($"{pair.Keys} put the centre of mass at {axis} = {1e3 * pair.Centre:F1} mm, but the file says {1e3 * x:F1} mm"), "the file's is used; drop one of the two");
            }

            return x;
        }

        _s.Context.Note(FormattableString.Invariant(
            $"chassis: centre of mass at {axis} = {1e3 * pair.Centre:F1} mm from {pair.Keys} ({1e3 * pair.First:G4} and {1e3 * pair.Second:G4} g, {1e3 * pair.Span:G4} mm apart)"), FormattableString.Invariant($"{1e3 * pair.Span / (1e3 * pair.Sum):G2} mm for each gram that a scale is off"));
        return pair.Centre;
    }

    private double CentreHeight(Section? section, double mass, double x, double boxHeight)
    {
        double? tilted = TiltHeight(mass, x, boxHeight);
        if (section?.Number("height") is double given)
        {
            if (tilted is double h && Math.Abs(h - given) > MostHeightMismatch * given)
            {
                _s.Context.Warning(_s.PlaceOf("tilt_rise"), FormattableString.Invariant($"the tilt test gives a centre of mass {1e3 * h:F1} mm high, but the file says {1e3 * given:F1} mm"), "the file's is used; drop one of the two");
            }

            return given;
        }

        if (tilted is null && !_s.Has("tilt_rise") && !_s.Has("tilt_front_weight") && !_s.Has("tilt_rear_weight"))
        {
            const string Tilt = "or weigh it with the front raised: tilt_rise with tilt_front_weight or tilt_rear_weight";
            bool hasTable = _s.Has("centre_of_mass");
            if (!hasTable)
            {
                _s.Missing(["centre_of_mass"], "missing \"centre_of_mass\" in chassis", $"add centre_of_mass = {{ x = \"0 mm\", height = \"28 mm\" }} (above the floor), {Tilt}");
            }
            else if (section is not null)
            {
                section.Missing(["height"], "missing \"height\" in chassis.centre_of_mass", $"add height = \"28 mm\" (above the floor, tyres just touching), {Tilt}");
            }
        }
        else if (tilted is double h)
        {
            return h;
        }

        return double.NaN;
    }

    // Null if there is no tilt test, or a wrong one, complained about then.
    private double? TiltHeight(double mass, double x, double boxHeight)
    {
        double? rise = _s.Number("tilt_rise");
        double? front = _s.Number("tilt_front_weight");
        double? rear = _s.Number("tilt_rear_weight");
        if (rise is null && front is null && rear is null)
        {
            return null;
        }

        if (rise is null || (front is null && rear is null))
        {
            string has = rise is not null ? "tilt_rise" : front is not null ? "tilt_front_weight" : "tilt_rear_weight";
            _s.Context.Error(_s.PlaceOf(has), $"\"{has}\" alone is no tilt test", rise is null ? "add tilt_rise = \"60 mm\" (how far the front axle was raised)" : "add tilt_front_weight or tilt_rear_weight (what the scale shows then)");
            return null;
        }

        if (IsWrong(rise, front, rear, mass, x) || Axles() is not AxlePair axles)
        {
            return null;
        }

        if (front + rear is double sum && Math.Abs(sum - mass) > MostMismatch * mass)
        {
            _s.Context.Warning(_s.PlaceOf("tilt_front_weight"), FormattableString.Invariant($"tilted, the scale shows {1e3 * sum:G5} g in all, but level {1e3 * mass:G5} g"), "weigh again; wheels must be free to roll");
        }

        double share = front is null ? 1.0 - (rear!.Value / mass) : rear is null ? front.Value / mass : front.Value / (front.Value + rear.Value);
        TiltResult t = MassFromScale.Height(axles, x, share, rise.Value);
        return IsSound(t, rise.Value, mass, boxHeight + (2.0 * axles.FrontRadius)) ? t.Height : null;
    }

    // Whether the height [m] lies between the floor and the robot's top; noted then, complained about else.
    private bool IsSound(TiltResult t, double rise, double mass, double most)
    {
        if (!double.IsFinite(t.Height))
        {
            _s.Context.Error(_s.PlaceOf("tilt_rise"), FormattableString.Invariant($"the front axle cannot rise by {1e3 * rise:G4} mm, further than the axles are apart"), "give the rise of the axle, not its distance");
            return false;
        }

        double perGram = Math.Abs(t.Sensitivity) / mass;
        if (t.Height <= 0.0 || t.Height > most)
        {
            string where = t.Height <= 0.0 ? "below the floor" : "above the robot";
            _s.Context.Error(_s.PlaceOf("tilt_rise"), FormattableString.Invariant($"the tilt test puts the centre of mass {1e3 * t.Height:F1} mm high, {where}"), FormattableString.Invariant($"one gram on the scale moves it by {perGram:G2} mm: weigh again with more rise and wheels free to roll, or give centre_of_mass height"));
            return false;
        }

        _s.Context.Note(FormattableString.Invariant(
            $"chassis: centre of mass {1e3 * t.Height:F1} mm high from the tilt of {t.Angle * 180.0 / Math.PI:F1} degrees, by moments about the rear wheels (sensitive: one gram on the scale moves it by {perGram:G2} mm)"), FormattableString.Invariant($"{perGram:G2} mm for each gram that a scale is off"));
        return true;
    }

    // The foremost and the rearmost wheels; null if they stand in one line, complained about already or soon.
    private AxlePair? Axles()
    {
        if (_wheels.Count == 0 || _wheels.Any(w => double.IsNaN(w.X + w.Radius)))
        {
            return null;
        }

        WheelSettings front = _wheels.MaxBy(w => w.X)!;
        WheelSettings rear = _wheels.MinBy(w => w.X)!;
        if (front.X > rear.X)
        {
            return new AxlePair(front.X, front.Radius, rear.X, rear.Radius);
        }

        _s.Context.Error(_s.PlaceOf("tilt_rise"), "all wheels stand in one line across", "a tilt test needs two axles");
        return null;
    }

    // A wrong number was complained about already.
    private static bool IsWrong(params double?[] values) => values.Any(v => v is double.NaN);

    // Readings under two opposite sides [kg], and what follows: the place of the centre of mass, and how far the axles are apart [m].
    private sealed record ScalePair(double First, double Second, double Centre, string Keys, double Span, Place Place)
    {
        public double Sum => First + Second;
    }
}
