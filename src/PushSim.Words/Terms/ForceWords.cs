namespace PushSim.Words.Terms;

/// <summary>Forces as builders read them: on a scale, in gram-force.</summary>
public static class ForceWords
{
    /// <summary>"975 gf"; kilogram-force from ten kilograms on.</summary>
    /// <param name="newton">The force [N].</param>
    public static string Scale(double newton) => Math.Abs(newton) >= 98.0665 ? Text($"{newton / 9.80665:0.0} kgf") : Gram(newton) + " gf";

    /// <summary>"9.56 N (975 gf)".</summary>
    /// <param name="newton">The force [N].</param>
    public static string Both(double newton) => Text($"{newton:0.00} N ({Scale(newton)})");
}
