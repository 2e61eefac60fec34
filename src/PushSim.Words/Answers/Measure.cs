namespace PushSim.Words.Answers;

/// <summary>A number with its key, words, unit, digits and better way: how a table shows it and a sentence tells it.</summary>
/// <param name="Key">Key in JSON, CSV, `ask` and --ask, with the unit as its last part.</param>
/// <param name="Words">Plain words.</param>
/// <param name="Unit">Unit on the screen; empty for a pure number.</param>
/// <param name="Digits">Digits after the point that it deserves on the screen [1].</param>
/// <param name="Better">Which way it is better.</param>
public record Measure(string Key, string Words, string Unit, int Digits, Better Better)
{
    /// <summary>Units of the screen in one unit of the key [1].</summary>
    public double ScreenScale { get; init; } = 1.0;

    /// <summary>Digits after the point for a value on the screen, where they hang on it; null: always <see cref="Digits"/>.</summary>
    public Func<double, int>? DigitsOf { get; init; }

    /// <summary>Its clause: {0} is who ("mole", "it"), {1} the value without its sign, {2} whose ("mole's", "its"); empty: its words and the value.</summary>
    public string Says { get; init; } = "";

    /// <summary>Its clause where the value is below zero; empty: <see cref="Says"/>.</summary>
    public string SaysBelowZero { get; init; } = "";

    /// <summary>Its clause where there is no value; empty or blank: its words and "none".</summary>
    public string SaysNone { get; init; } = "";

    /// <summary>Whether its sign is only a side, so that sizes are compared.</summary>
    public bool IsSided { get; init; }

    /// <summary>A value as the screen shows it; empty for none.</summary>
    /// <param name="value">The value in the unit of the key.</param>
    public string Shown(double? value) => value is not double v ? ""
        : (v * ScreenScale).ToString("F" + (DigitsOf?.Invoke(v) ?? Digits).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);

    /// <summary>A value as a sentence has it: with its unit, without its sign, which the words carry.</summary>
    /// <param name="value">The value in the unit of the key.</param>
    public string Spoken(double value) => $"{Shown(Math.Abs(value))} {Unit}".TrimEnd();

    /// <summary>By how much one value is more than another, as both are shown, so that the numbers add up for who reads them; in units of the screen.</summary>
    /// <param name="value">The value in the unit of the key.</param>
    /// <param name="other">The other one.</param>
    public decimal Difference(double value, double other) => decimal.Parse(Shown(value), CultureInfo.InvariantCulture) - decimal.Parse(Shown(other), CultureInfo.InvariantCulture);

    /// <summary>The clause that tells a value.</summary>
    /// <param name="who">The robot, by its name or "it".</param>
    /// <param name="value">The value in the unit of the key; null for none.</param>
    public string Clause(string who, double? value)
    {
        if (value is not double v)
        {
            return Filled(SaysNone.Length > 1 ? SaysNone : Words + ": none", "");
        }

        string sign = v < 0.0 && SaysBelowZero.Length == 0 ? "-" : "";
        return Filled(v < 0.0 && SaysBelowZero.Length > 0 ? SaysBelowZero : Says.Length > 0 ? Says : Words + " {1}", sign + Spoken(v));

        string Filled(string words, string told) => string.Format(CultureInfo.InvariantCulture, words, who, told, who == "it" ? "its" : who + "'s");
    }

    /// <summary>Whether a sentence names a value in this unit and with these digits.</summary>
    public bool IsSaidIn(string sentence, double value)
    {
        string said = Spoken(value);
        for (int at = sentence.IndexOf(said, StringComparison.Ordinal); at >= 0; at = sentence.IndexOf(said, at + 1, StringComparison.Ordinal))
        {
            int end = at + said.Length;
            if ((at == 0 || !(char.IsAsciiDigit(sentence[at - 1]) || sentence[at - 1] == '.')) && (end == sentence.Length || !(char.IsLetterOrDigit(sentence[end]) || sentence[end] == '/')))
            {
                return true;
            }
        }

        return false;
    }
}
