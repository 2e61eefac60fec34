namespace PushSim.Analysis.Chance;

/// <summary>The elementary functions over arguments of every size: no scene of <see cref="SelfTestScenes"/> has a tread that slides so fast, or hardly moves, in all lanes at once.</summary>
internal static class SelfTestFunctions
{
    // from where the series stands to beyond where the form rounds to 1 [1]
    private static readonly double[] s_arguments = [1e-9, 1e-5, 1e-3, 0.02, 0.11, 0.24, 0.26, 0.4, 0.8, 1.5, 3.0, 6.5, 9.5, 12.0, 19.5, 25.0, 60.0];

    /// <summary>Values of e^x, ln x, tanh, sine and cosine [1].</summary>
    /// <typeparam name="T">The number type, of one lane.</typeparam>
    public static IEnumerable<double> Values<T>()
        where T : struct, IReal<T>, ILanes<T>
    {
        foreach (double x in s_arguments.SelectMany(a => new[] { a, -a }))
        {
            T.SinCos(x, out T sine, out T cosine);
            T[] values = [T.Exp(x), T.Log(Math.Abs(x)), T.Tanh(x), sine, cosine];
            foreach (T value in values)
            {
                yield return Lane.Get(value, 0);
            }
        }
    }
}
