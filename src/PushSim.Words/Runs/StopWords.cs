namespace PushSim.Words.Runs;

/// <summary>Why a run stopped, and what to change.</summary>
internal static class StopWords
{
    public static string Of(RunStop stop)
    {
        string at = Text($"at {stop.Time:0.000} s");
        return stop.Kind switch
        {
            RunStopKind.Refused => stop.Refusal,
            RunStopKind.State => $"the state is no longer finite {at}; report this scenario",
            RunStopKind.Rates => $"a force, current or temperature is not finite {at}; report this scenario",
            RunStopKind.Battery => $"the battery of {stop.Robot!.Name} cannot deliver what its controllers ask for; take a battery with less resistance or lower the current limits",
            RunStopKind.Upset => $"{RunVerdict.Words(stop.Upset)} {at}",
            RunStopKind.Step => $"the step became too small {at}; {Fastest(stop.Fastest, stop.Robot!)}",
            _ => Text($"more work than allowed {at}, {stop.Evaluations} evaluations at {stop.AllowedRate:0} per simulated second; {Fastest(stop.Fastest, stop.Robot!)}"),
        };
    }

    // The part that asks for the shortest steps, and the keys to change
    private static string Fastest(FastMode mode, RobotSettings robot) => "the fastest part is " + mode.Part switch
    {
        FastPart.Tyre => $"the tyre of wheel {robot.Wheels[mode.Index].Name} of {robot.Name}: lower its body_stiffness or body_damping, or raise its tread_mass or breakaway_deflection",
        FastPart.Drive => $"drive {robot.Drives[mode.Index].Name} of {robot.Name}: lower its friction or hold torque, or raise the rotor inertia of its motors",
        FastPart.Springs => $"{robot.Name} on its tyres: lower their vertical_stiffness",
        FastPart.Tether => "the tether: lower its stiffness",
        _ => $"the contact of {robot.Name}: lower the stiffness in [contact]",
    };
}
