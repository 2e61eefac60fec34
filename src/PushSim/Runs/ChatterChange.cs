namespace PushSim.Runs;

/// <summary>A change of one number of all tyres of a robot.</summary>
/// <param name="Part">The number.</param>
/// <param name="Factor">How many times what it is [1].</param>
/// <param name="From">What it is [unit of the part]; null where the tyres differ in it.</param>
public sealed record ChatterChange(ChatterPart Part, double Factor, double? From)
{
    /// <summary>What it becomes [unit of the part]; null where the tyres differ in it.</summary>
    public double? To => Factor * From;
}
