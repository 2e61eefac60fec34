using System.Text;

namespace PushSim.Scenarios.Units;

/// <summary>
/// The units a file may use. Exact factors: inch 0.0254 m, pound 0.45359237 kg, standard gravity 9.80665 m/s^2 (SI
/// brochure and international yard and pound agreement); all others follow from these and the SI prefixes.
/// </summary>
internal static class UnitTable
{
    /// <summary>Standard gravity [m/s^2].</summary>
    public const double G = 9.80665;

    /// <summary>Mass of a pound [kg].</summary>
    public const double Pound = 0.45359237;

    /// <summary>Mass of an ounce [kg].</summary>
    public const double Ounce = Pound / 16.0;

    private const double Inch = 0.0254;
    private const double Rpm = Math.PI / 30.0;

    // In the order of <see cref="Dimension"/>. First of each row is the SI name; "a|b" are spellings of one unit, the first is the one printed. Letter case counts, since m and M, k and K
    // mean different things; the habits that cannot be mistaken ("RPM", "12 v", "mAH") are spelled out. A blank is where a product may have a dot,
    // a full stop, a hyphen or nothing.
    private static readonly (Dimension Dimension, string Words, (string Names, double Factor, double Offset)[] Units)[] Rows =
    [
        (Dimension.Ratio, "a pure number or percentage", [("", 1, 0), ("%|percent|pct", 0.01, 0), (":1", 1, 0)]),
        (Dimension.Length, "a length", [
            ("m|metre|metres|meter|meters", 1, 0), ("mm|millimetre|millimetres|millimeter|millimeters", 1e-3, 0), ("cm|centimetre|centimetres|centimeter|centimeters", 1e-2, 0), ("um|micron|microns", 1e-6, 0),
            ("in|inch|inches|\"|''", Inch, 0), ("ft|foot|feet|'", Inch * 12, 0), ("thou|mil|mils", Inch * 1e-3, 0)]),
        (Dimension.Mass, "a mass", [("kg|Kg|kilogram|kilograms", 1, 0), ("g|gram|grams|gramme|grammes", 1e-3, 0), ("mg", 1e-6, 0), ("lb|lbs|Lb|LB|lbm|pound|pounds", Pound, 0), ("oz|Oz|OZ|ounce|ounces", Ounce, 0)]),
        (Dimension.Force, "a force", [
            ("N|newton|newtons|Newton|Newtons", 1, 0), ("mN", 1e-3, 0), ("kN", 1e3, 0), ("gf|gram force", G * 1e-3, 0), ("kgf|kp|kilogram force", G, 0),
            ("lbf|pound force", Pound * G, 0), ("ozf|ounce force", Ounce * G, 0)]),
        (Dimension.Torque, "a torque", [
            ("N m|newton metre|newton metres|newton meter|newton meters", 1, 0), ("mN m", 1e-3, 0), ("uN m", 1e-6, 0), ("N cm", 1e-2, 0), ("mN cm", 1e-5, 0), ("N mm", 1e-3, 0),
            ("kgf cm|kg cm|Kg cm|kp cm|cm kg", G * 1e-2, 0), ("gf cm|g cm", G * 1e-5, 0), ("kgf m|kg m", G, 0), ("gf m|g m", G * 1e-3, 0), ("kgf mm|kg mm", G * 1e-3, 0), ("gf mm|g mm", G * 1e-6, 0),
            ("oz in|ozf in|in oz|in ozf|oz inch", Ounce * G * Inch, 0), ("lb in|lbf in|in lb|in lbf|in lbs", Pound * G * Inch, 0), ("lb ft|lbf ft|ft lb|ft lbf|ft lbs", Pound * G * Inch * 12, 0)]),
        (Dimension.AngularSpeed, "a turning speed", [
            ("rad/s|rad/sec|rads/s", 1, 0), ("rpm|1/min|RPM|Rpm|r/min|rev/min|revs/min|U/min|/min", Rpm, 0), ("krpm", 1e3 * Rpm, 0), ("deg/s|°/s|deg/sec|dps", Math.PI / 180, 0),
            ("rev/s|1/s|rps|revs/s", 2 * Math.PI, 0)]),
        (Dimension.SpeedConstant, "a speed constant", [("rad/s/V|rad/s V|rad/V s", 1, 0), ("rpm/V|1/min/V|1/min V|RPM/V|Rpm/V|rpm/v|RPM/v|r/min/V|rev/min/V|KV|Kv|kv|kV", Rpm, 0)]),
        (Dimension.TorqueConstant, "a torque constant", [
            ("N m/A|V s/rad|V s|V/rad/s", 1, 0), ("mN m/A|mV s/rad|mV s", 1e-3, 0), ("N cm/A", 1e-2, 0), ("kgf cm/A|kg cm/A", G * 1e-2, 0), ("gf cm/A|g cm/A", G * 1e-5, 0),
            ("oz in/A|ozf in/A|in oz/A", Ounce * G * Inch, 0), ("lb in/A|lbf in/A|in lb/A", Pound * G * Inch, 0), ("V/rpm", 1 / Rpm, 0), ("mV/rpm", 1e-3 / Rpm, 0), ("V/krpm", 1e-3 / Rpm, 0)]),
        (Dimension.Voltage, "a voltage", [("V|v|volt|volts|Volt|Volts|VDC|Vdc", 1, 0), ("mV", 1e-3, 0)]),
        (Dimension.Current, "a current", [("A|a|amp|amps|Amp|Amps|ampere|amperes", 1, 0), ("mA|ma", 1e-3, 0)]),
        (Dimension.Resistance, "an electric resistance", [("ohm|Ohm|ohms|Ohms|OHM|R", 1, 0), ("mohm|mOhm|mohms|mOhms|milliohm|milliohms|mR", 1e-3, 0), ("uohm|uOhm", 1e-6, 0), ("kohm|kOhm", 1e3, 0), ("Mohm|MOhm|megohm", 1e6, 0)]),
        (Dimension.Inductance, "an inductance", [("H|henry", 1, 0), ("mH", 1e-3, 0), ("uH", 1e-6, 0), ("nH", 1e-9, 0)]),
        (Dimension.Charge, "a charge", [("A s|C|coulomb|coulombs", 1, 0), ("A h|a h|A H|amp hours|amp hour", 3600, 0), ("mA h|ma h|mA H", 3.6, 0)]),
        (Dimension.Angle, "an angle", [("rad|radian|radians", 1, 0), ("deg|°|degree|degrees", Math.PI / 180, 0), ("mrad", 1e-3, 0), ("arcmin", Math.PI / 10800, 0), ("rev|turn|turns", 2 * Math.PI, 0)]),
        (Dimension.Temperature, "a temperature", [("°C|deg C|C|celsius|Celsius", 1, 0), ("K|kelvin", 1, -273.15), ("°F|deg F|F|fahrenheit|Fahrenheit", 5.0 / 9.0, -160.0 / 9.0)]),
        (Dimension.Speed, "a speed", [
            ("m/s|m/sec|metres/s|meters/s", 1, 0), ("mm/s|mm/sec", 1e-3, 0), ("cm/s|cm/sec", 1e-2, 0), ("km/h|kmh|kph|kmph|km/hr", 1 / 3.6, 0), ("in/s|ips|inches/s|in/sec", Inch, 0),
            ("ft/s|fps|feet/s|ft/sec", Inch * 12, 0), ("mph|MPH|mi/h", 0.44704, 0), ("m/min", 1.0 / 60.0, 0)]),
        (Dimension.Time, "a time", [("s|sec|secs|second|seconds", 1, 0), ("ms|msec|millisecond|milliseconds", 1e-3, 0), ("us", 1e-6, 0), ("min|mins|minute|minutes", 60, 0)]),
        (Dimension.Stiffness, "a stiffness", [
            ("N/m", 1, 0), ("N/mm", 1e3, 0), ("kN/m", 1e3, 0), ("N/cm", 1e2, 0), ("kgf/mm|kg/mm", G * 1e3, 0), ("kgf/cm|kg/cm", G * 1e2, 0), ("gf/mm|g/mm", G, 0), ("lbf/in|lb/in|lbs/in", Pound * G / Inch, 0),
            ("ozf/in|oz/in", Ounce * G / Inch, 0)]),
        (Dimension.Damping, "a damping", [("N s/m|N/(m/s)|kg/s", 1, 0), ("mN s/m", 1e-3, 0), ("N s/mm", 1e3, 0), ("lbf s/in|lb s/in", Pound * G / Inch, 0)]),
        (Dimension.RotaryDamping, "a turning damping", [("N m s/rad|N m s|N m/(rad/s)", 1, 0), ("mN m s/rad|mN m s", 1e-3, 0), ("uN m s/rad|uN m s", 1e-6, 0), ("N m/rpm", 1 / Rpm, 0), ("mN m/rpm", 1e-3 / Rpm, 0), ("mN m/krpm", 1e-6 / Rpm, 0)]),
        (Dimension.Inertia, "a moment of inertia", [
            ("kg m2", 1, 0), ("g cm2", 1e-7, 0), ("kg cm2", 1e-4, 0), ("g mm2", 1e-9, 0), ("kg mm2", 1e-6, 0), ("g m2", 1e-3, 0), ("oz in2", Ounce * Inch * Inch, 0), ("lb in2", Pound * Inch * Inch, 0)]),
        (Dimension.ThermalResistance, "a thermal resistance", [("K/W|°C/W|C/W|deg C/W", 1, 0)]),
        (Dimension.HeatCapacity, "a heat capacity", [("J/K|J/°C|J/C|J/deg C|W s/K", 1, 0), ("kJ/K", 1e3, 0)]),
        (Dimension.Frequency, "a frequency", [("Hz|1/s|hz|/s|SPS|sps", 1, 0), ("kHz|khz", 1e3, 0)]),
        (Dimension.Rate, "a rate of change", [("1/s|/s", 1, 0), ("%/s", 0.01, 0)]),
        (Dimension.Volume, "a volume", [("m3", 1, 0), ("mm3", 1e-9, 0), ("cm3|cc|ml|mL", 1e-6, 0)]),
        (Dimension.InverseLength, "a reciprocal length", [("1/m|/m", 1, 0), ("1/mm|/mm", 1e3, 0), ("1/cm|/cm", 1e2, 0)]),
        (Dimension.InverseSpeed, "a reciprocal speed", [("s/m", 1, 0), ("s/mm", 1e3, 0), ("s/cm", 1e2, 0)]),
        (Dimension.Pressure, "a pressure", [("N/m2|Pa", 1, 0), ("N/mm2|MPa", 1e6, 0), ("kPa", 1e3, 0), ("N/cm2", 1e4, 0), ("bar", 1e5, 0), ("psi|lbf/in2", Pound * G / (Inch * Inch), 0)]),
        (Dimension.InverseAngle, "a share per angle", [("1/rad|/rad", 1, 0), ("1/deg|/deg|1/°|/°", 180 / Math.PI, 0)]),
        (Dimension.Density, "a density", [("kg/m3", 1, 0), ("g/cm3|g/cc|g/ml", 1e3, 0), ("lb/ft3", Pound / (Inch * Inch * Inch * 1728), 0)]),
    ];

    // Signs that say no more than that a product is meant.
    private const string Gone = " \t\u00A0\u202F\u2009·⋅•∙*^-\u2010\u2011()";

    // Signs that are written in several ways, and what each becomes.
    private const string Signs = "²³µμ″”′’º˚Ω\u2126";
    private static readonly string[] Plain = ["2", "3", "u", "u", "\"", "\"", "'", "'", "°", "°", "ohm", "ohm"];

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
        foreach (Dimension dimension in Enum.GetValues<Dimension>())
        {
            if (wanted.Length > 0 && Units.ContainsKey((dimension, wanted)))
            {
                return dimension;
            }
        }

        return null;
    }

    /// <summary>The dimension in words, with its article.</summary>
    public static string Words(Dimension dimension) => Rows[(int)dimension].Words;

    /// <summary>The dimension in words, without its article: "mass".</summary>
    public static string BareWords(Dimension dimension) => Words(dimension).Split(' ', 2)[1];

    /// <summary>One spelling for the many ways to type a product: signs of multiplication, blanks and brackets go, raised figures come down.</summary>
    public static string Normalise(string text)
    {
        var plain = new StringBuilder(text.Length);
        foreach (char c in text.Where(c => !Gone.Contains(c)))
        {
            int sign = Signs.IndexOf(c);
            _ = sign < 0 ? plain.Append(c) : plain.Append(Plain[sign]);
        }

        return plain.ToString();
    }

    private static string First(string names) => names.Split('|')[0];

    private static Dictionary<(Dimension, string), Unit> Index()
    {
        Dictionary<(Dimension, string), Unit> index = [];
        foreach ((Dimension dimension, _, (string, double, double)[] units) in Rows)
        {
            foreach ((string names, double factor, double offset) in units)
            {
                foreach (string name in names.Split('|'))
                {
                    foreach (string spelling in WithStops(name))
                    {
                        index[(dimension, Normalise(spelling))] = new Unit(First(names), factor, offset);
                    }
                }
            }
        }

        return index;
    }

    // The name, and as often as it has products with full stops in some or all of them: "kgf.cm", but no "m.m" for mm.
    private static IEnumerable<string> WithStops(string name)
    {
        int[] products = [.. Enumerable.Range(0, name.Length).Where(i => name[i] == ' ')];
        for (int set = 0; set < 1 << products.Length; set++)
        {
            yield return new string([.. name.Select((c, i) => c == ' ' && (set >> Array.IndexOf(products, i) & 1) == 1 ? '.' : c)]);
        }
    }
}
