using PushSim.Analysis.Limits;
using PushSim.Powertrain;

namespace PushSim.Words.Limits;

/// <summary>The limits in one sentence.</summary>
public static class LimitVerdict
{
    // Between the answer and the forces that tell why.
    private const string Why = ": the motors could give ";

    /// <summary>The sentence.</summary>
    public static string Of(LimitReport r) => Forces(r) + Series(r);

    /// <summary>The answer alone: what binds, up to where.</summary>
    public static string Answer(LimitReport r) => Forces(r) is var all && all.IndexOf(Why, StringComparison.Ordinal) is var at and >= 0 ? all[..at] + "." : all;

    /// <summary>What wheels in series do to each other; empty where none stands.</summary>
    public static string OfSeries(LimitReport r) => Series(r).TrimStart();

    // The sum of forces does not tell that a wheel with grip to spare gets no current
    private static string Series(LimitReport r)
    {
        ControllerSettings[] series = [.. r.Scenario.Robot.Controllers.Where(c => c.Wiring == Wiring.Series)];
        WheelLimit[] stand = [.. r.Wheels.Where(w => w.Binding == BindingKind.Series)];
        if (stand.Length == 0)
        {
            return "";
        }

        // only those that share a controller with one that stands
        HashSet<int> drives = [.. series.Where(c => c.Motors.Any(m => Has(m.Drive, stand))).SelectMany(c => c.Motors).Select(m => m.Drive)];
        WheelLimit[] spin = [.. r.Wheels.Where(w => w.SpinSpeed > 0.0 && drives.Any(d => Has(d, [w])))];
        return $" Its motors are wired in series: {Names(stand)} {(stand.Length == 1 ? "stands still and gets" : "stand still and get")} only what the spinning {Names(spin)} {(spin.Length == 1 ? "lets" : "let")} through.";

        bool Has(int drive, WheelLimit[] wheels) => r.Scenario.Robot.Drives[drive].Wheels.Any(w => wheels.Any(l => l.Name == r.Scenario.Robot.Wheels[w.Wheel].Name));
    }

    private static string Names(WheelLimit[] wheels)
    {
        string[] names = [.. wheels.Select(w => w.Name)];
        return names.Length == 1 ? $"wheel {names[0]}" : $"wheels {string.Join(", ", names[..^1])} and {names[^1]}";
    }

    private static string Forces(LimitReport r)
    {
        LimitState s = r.Now;
        string name = r.Scenario.Robot.Name;
        string forces = Text($"the motors could give {(s.IsStarved ? "less than " : "")}{s.MotorForce:0.0} N ({ForceWords.Scale(s.MotorForce)}) at the floor{ThrottleWords.At(s.Condition.Throttle)}, the tyres hold {s.TractionPeak:0.0} N ({ForceWords.Scale(s.TractionPeak)})");
        if (s.Status == PullStatus.RearsUp)
        {
            return Text($"{name} rears up on its hook at {s.RearsUpAt:0.0} N, before it pulls with all it has: {forces}.");
        }

        if (s.Status == PullStatus.NotFound)
        {
            return $"What {name} pulls at standstill was not found: {forces}.";
        }

        if (s.IsStarved)
        {
            return $"The battery cannot feed the stalled motors of {name}, so what binds at standstill is not told: {forces}.";
        }

        if (s.Pull <= 0.0)
        {
            return $"{name} cannot pull at all: {forces}, and skids, rolling or slope take all of the lesser.";
        }

        if (s.Bound.Count == 0)
        {
            return $"The battery cannot feed the motors of {name} as it pulls, so what binds is not told: {forces}.";
        }

        string pulls = Text($"{forces}; it pulls {s.Pull:0.0} N ({ForceWords.Scale(s.Pull!.Value)})");
        if (s.Bound.Count == 1 && s.Binding == BindingKind.Tyre)
        {
            string until = s.CrossingSpeed is not double v ? " at every speed" : v < 0.05 ? " only at standstill, where the motors are level with them" : Text($" up to {v:0.0} m/s, the motors above");
            return $"The tyres limit {name}{until}: {pulls}.";
        }

        string more = s.Bound.Count > 1 ? " In brackets: what 10 % more of it adds." : "";
        string who = string.Join(", then the ", s.Bound.Select(b => Who(b, s.Bound.Count > 1)));
        return $"The {who} {(s.Bound.Count == 1 && s.Binding is BindingKind.CurrentLimit or BindingKind.Battery or BindingKind.Series ? "holds" : "hold")} {name} back: {pulls}.{more}";
    }

    private static string Who(BoundBy b, bool hasGain)
    {
        string words = b.Kind switch { BindingKind.CurrentLimit => "controllers' current limit", BindingKind.Battery => "battery's sag", _ => BindingTable.Words(b.Kind) };
        return hasGain && double.IsFinite(b.GainPercent) ? Text($"{words} ({b.GainPercent:+0.0;-0.0;0.0} %)") : words;
    }
}
