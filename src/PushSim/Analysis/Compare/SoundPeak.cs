namespace PushSim.Analysis.Compare;

/// <summary>A tone in a sound.</summary>
/// <param name="Frequency">Its frequency [Hz].</param>
/// <param name="Width">Width at half its power [Hz].</param>
/// <param name="Level">Power above the background around it [dB].</param>
/// <param name="Harmonics">How many of its second to fifth multiples stand out, too [1].</param>
public sealed record SoundPeak(double Frequency, double Width, double Level, int Harmonics);
