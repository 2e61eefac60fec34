namespace PushSim.Scenarios.Units;

/// <summary>One unit: value in SI = Factor * number + Offset.</summary>
/// <param name="Name">How it is printed.</param>
/// <param name="Factor">SI per unit.</param>
/// <param name="Offset">SI value of zero in this unit.</param>
internal readonly record struct Unit(string Name, double Factor, double Offset = 0.0);

/// <summary>
/// The units a file may use. Exact factors: inch 0.0254 m, pound 0.45359237 kg, standard gravity 9.80665 m/s^2 (SI
/// brochure and international yard and pound agreement); all others follow from these and the SI prefixes.
/// </summary>
internal static class UnitTable
{
    private const double G = 9.80665;
    private const double Inch = 0.0254;
    private const double Pound = 0.45359237;
    private const double Ounce = Pound / 16.0;
    private const double Rpm = Math.PI / 30.0;

    // First of each row is the SI name; "a|b" are spellings of one unit, the first is the one printed.
    private static readonly (Dimension Dimension, (string Names, double Factor, double Offset)[] Units)[] Rows =
    [
        (Dimension.Ratio, [("", 1, 0), ("%|percent", 0.01, 0), (":1", 1, 0)]),
        (Dimension.Length, [("m", 1, 0), ("mm", 1e-3, 0), ("cm", 1e-2, 0), ("um", 1e-6, 0), ("in|inch|inches|\"", Inch, 0)]),
        (Dimension.Mass, [("kg", 1, 0), ("g", 1e-3, 0), ("mg", 1e-6, 0), ("lb|lbs", Pound, 0), ("oz", Ounce, 0)]),
        (Dimension.Force, [("N", 1, 0), ("mN", 1e-3, 0), ("kN", 1e3, 0), ("gf", G * 1e-3, 0), ("kgf|kp", G, 0), ("lbf", Pound * G, 0), ("ozf", Ounce * G, 0)]),
        (Dimension.Torque, [
            ("N m|newton metre", 1, 0), ("mN m", 1e-3, 0), ("uN m", 1e-6, 0), ("N cm", 1e-2, 0), ("N mm", 1e-3, 0),
            ("kgf cm|kg cm|kgfcm", G * 1e-2, 0), ("gf cm|g cm", G * 1e-5, 0), ("kgf m|kg m", G, 0), ("gf m|g m", G * 1e-3, 0), ("kgf mm|kg mm", G * 1e-3, 0),
            ("oz in|ozf in|in oz", Ounce * G * Inch, 0), ("lb in|lbf in|in lb", Pound * G * Inch, 0), ("lb ft|lbf ft|ft lb", Pound * G * Inch * 12, 0)]),
        (Dimension.AngularSpeed, [("rad/s", 1, 0), ("rpm|1/min|RPM|r/min|rev/min|/min", Rpm, 0), ("deg/s|°/s", Math.PI / 180, 0), ("rev/s|1/s", 2 * Math.PI, 0)]),
        (Dimension.SpeedConstant, [("rad/s/V|rad/sV|rad/Vs", 1, 0), ("rpm/V|1/min/V|RPM/V|r/min/V|KV|Kv", Rpm, 0)]),
        (Dimension.TorqueConstant, [
            ("N m/A|V s/rad|V s", 1, 0), ("mN m/A|mV s/rad|mV s", 1e-3, 0), ("N cm/A", 1e-2, 0), ("kgf cm/A|kg cm/A", G * 1e-2, 0), ("gf cm/A|g cm/A", G * 1e-5, 0),
            ("oz in/A|ozf in/A", Ounce * G * Inch, 0), ("V/rpm", 1 / Rpm, 0), ("mV/rpm", 1e-3 / Rpm, 0), ("V/krpm", 1e-3 / Rpm, 0)]),
        (Dimension.Voltage, [("V", 1, 0), ("mV", 1e-3, 0)]),
        (Dimension.Current, [("A", 1, 0), ("mA", 1e-3, 0)]),
        (Dimension.Resistance, [("ohm|Ohm|ohms", 1, 0), ("mohm|mOhm|milliohm", 1e-3, 0)]),
        (Dimension.Inductance, [("H", 1, 0), ("mH", 1e-3, 0), ("uH", 1e-6, 0)]),
        (Dimension.Charge, [("A s|C", 1, 0), ("A h", 3600, 0), ("mA h", 3.6, 0)]),
        (Dimension.Angle, [("rad", 1, 0), ("deg|°|degree|degrees", Math.PI / 180, 0)]),
        (Dimension.Temperature, [("°C|degC|C", 1, 0), ("K", 1, -273.15), ("°F|degF|F", 5.0 / 9.0, -160.0 / 9.0)]),
        (Dimension.Speed, [("m/s", 1, 0), ("mm/s", 1e-3, 0), ("cm/s", 1e-2, 0), ("km/h|kmh|kph", 1 / 3.6, 0), ("in/s", Inch, 0), ("ft/s", Inch * 12, 0), ("mph", 0.44704, 0)]),
        (Dimension.Time, [("s|sec", 1, 0), ("ms", 1e-3, 0), ("us", 1e-6, 0), ("min", 60, 0)]),
        (Dimension.Stiffness, [("N/m", 1, 0), ("N/mm", 1e3, 0), ("kN/m", 1e3, 0), ("N/cm", 1e2, 0), ("kgf/mm|kg/mm", G * 1e3, 0), ("gf/mm|g/mm", G, 0), ("lbf/in|lb/in", Pound * G / Inch, 0)]),
        (Dimension.Damping, [("N s/m|N/(m/s)", 1, 0), ("mN s/m", 1e-3, 0), ("N s/mm", 1e3, 0)]),
        (Dimension.RotaryDamping, [("N m s/rad|N m s", 1, 0), ("mN m s/rad|mN m s", 1e-3, 0), ("N m/rpm", 1 / Rpm, 0), ("mN m/rpm", 1e-3 / Rpm, 0)]),
        (Dimension.Inertia, [("kg m2", 1, 0), ("g cm2", 1e-7, 0), ("kg cm2", 1e-4, 0), ("g mm2", 1e-9, 0), ("kg mm2", 1e-6, 0), ("g m2", 1e-3, 0)]),
        (Dimension.ThermalResistance, [("K/W|°C/W|C/W", 1, 0)]),
        (Dimension.HeatCapacity, [("J/K|J/°C|Ws/K", 1, 0)]),
        (Dimension.Frequency, [("Hz|1/s", 1, 0), ("kHz", 1e3, 0)]),
        (Dimension.Rate, [("1/s|/s", 1, 0), ("%/s", 0.01, 0)]),
        (Dimension.Volume, [("m3", 1, 0), ("mm3", 1e-9, 0), ("cm3|cc|ml", 1e-6, 0)]),
        (Dimension.InverseLength, [("1/m|/m", 1, 0), ("1/mm|/mm", 1e3, 0), ("1/cm|/cm", 1e2, 0)]),
        (Dimension.InverseSpeed, [("s/m", 1, 0), ("s/mm", 1e3, 0)]),
        (Dimension.Pressure, [("N/m2|Pa", 1, 0), ("N/mm2|MPa", 1e6, 0), ("kPa", 1e3, 0), ("N/cm2", 1e4, 0), ("bar", 1e5, 0), ("psi|lbf/in2", Pound * G / (Inch * Inch), 0)]),
        (Dimension.InverseAngle, [("1/rad|/rad", 1, 0), ("1/deg|/deg|1/°|/°", 180 / Math.PI, 0)]),
        (Dimension.Density, [("kg/m3", 1, 0), ("g/cm3|g/cc|g/ml", 1e3, 0), ("lb/ft3", Pound / (Inch * Inch * Inch * 1728), 0)]),
    ];

    private static readonly Dictionary<(Dimension, string), Unit> Units = Index();

    /// <summary>The unit of that spelling, if the dimension has it.</summary>
    public static bool TryFind(Dimension dimension, string text, out Unit unit) =>
        Units.TryGetValue((dimension, Normalise(text)), out unit);

    /// <summary>Name of the SI unit; empty for a pure number.</summary>
    public static string SiName(Dimension dimension) => First(Rows[(int)dimension].Units[0].Names);

    /// <summary>All printed unit names of a dimension.</summary>
    public static IReadOnlyList<string> Names(Dimension dimension) =>
        [.. Rows[(int)dimension].Units.Select(u => First(u.Names)).Where(n => n.Length > 0)];

    /// <summary>All spellings of a dimension's units.</summary>
    public static IEnumerable<string> Spellings(Dimension dimension) =>
        Rows[(int)dimension].Units.SelectMany(u => u.Names.Split('|')).Where(n => n.Length > 0);

    /// <summary>What another dimension calls this unit; null if nobody knows it.</summary>
    public static Dimension? DimensionOf(string text)
    {
        string wanted = Normalise(text);
        foreach ((Dimension dimension, _) in Rows)
        {
            if (wanted.Length > 0 && Units.ContainsKey((dimension, wanted)))
            {
                return dimension;
            }
        }

        return null;
    }

    /// <summary>The dimension in words, with its article.</summary>
    public static string Words(Dimension dimension) => dimension switch
    {
        Dimension.Ratio => "a pure number or percentage",
        Dimension.Length => "a length",
        Dimension.Mass => "a mass",
        Dimension.Force => "a force",
        Dimension.Torque => "a torque",
        Dimension.AngularSpeed => "a turning speed",
        Dimension.SpeedConstant => "a speed constant",
        Dimension.TorqueConstant => "a torque constant",
        Dimension.Voltage => "a voltage",
        Dimension.Current => "a current",
        Dimension.Resistance => "an electric resistance",
        Dimension.Inductance => "an inductance",
        Dimension.Charge => "a charge",
        Dimension.Angle => "an angle",
        Dimension.Temperature => "a temperature",
        Dimension.Speed => "a speed",
        Dimension.Time => "a time",
        Dimension.Stiffness => "a stiffness",
        Dimension.Damping => "a damping",
        Dimension.RotaryDamping => "a turning damping",
        Dimension.Inertia => "a moment of inertia",
        Dimension.ThermalResistance => "a thermal resistance",
        Dimension.HeatCapacity => "a heat capacity",
        Dimension.Frequency => "a frequency",
        Dimension.Rate => "a rate of change",
        Dimension.Volume => "a volume",
        Dimension.InverseLength => "a reciprocal length",
        Dimension.InverseSpeed => "a reciprocal speed",
        Dimension.Pressure => "a pressure",
        Dimension.InverseAngle => "a share per angle",
        Dimension.Density => "a density",
        _ => throw new ArgumentOutOfRangeException(nameof(dimension)),
    };

    /// <summary>One spelling for the many ways to type a product: signs of multiplication, blanks and brackets go, raised figures come down.</summary>
    public static string Normalise(string text)
    {
        Span<char> buffer = stackalloc char[text.Length * 3];
        int n = 0;
        foreach (char c in text)
        {
            switch (c)
            {
                case ' ' or '\t' or '\u00A0' or '\u202F' or '·' or '⋅' or '•' or '*' or '^' or '-' or '(' or ')':
                    break;
                case '²':
                    buffer[n++] = '2';
                    break;
                case '³':
                    buffer[n++] = '3';
                    break;
                case 'µ' or 'μ':
                    buffer[n++] = 'u';
                    break;
                case 'Ω' or '\u2126':
                    "ohm".CopyTo(buffer[n..]);
                    n += 3;
                    break;
                case '″':
                    buffer[n++] = '"';
                    break;
                default:
                    buffer[n++] = c;
                    break;
            }
        }

        return new string(buffer[..n]);
    }

    private static string First(string names) => names.Split('|')[0];

    private static Dictionary<(Dimension, string), Unit> Index()
    {
        Dictionary<(Dimension, string), Unit> index = [];
        foreach ((Dimension dimension, (string, double, double)[] units) in Rows)
        {
            foreach ((string names, double factor, double offset) in units)
            {
                foreach (string name in names.Split('|'))
                {
                    index[(dimension, Normalise(name))] = new Unit(First(names), factor, offset);
                }
            }
        }

        return index;
    }
}
