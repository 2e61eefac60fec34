using PushSim.Analysis.Fit;

namespace PushSim.Words.Answers;

/// <summary>Every number that a run can answer, one row each. Screen, JSON, CSV, sweeps, lists of --ask and the page of answers come from it.</summary>
public static class AnswerCatalogue
{
    private static readonly ManoeuvreKind[] s_shoves = [.. Enum.GetValues<ManoeuvreKind>().Where(k => ManoeuvreTraits.Of(k).NeedsOpponent)];

    private static readonly ManoeuvreKind[] s_pulls = Of(ManoeuvreFamily.Pull);

    private static readonly ManoeuvreKind[] s_pushes = Of(ManoeuvreFamily.Push);

    private static readonly ManoeuvreKind[] s_turns = Of(ManoeuvreFamily.Turn);

    private static readonly ManoeuvreKind[] s_stops = Of(ManoeuvreFamily.Stop);

    private static readonly ManoeuvreKind[] s_drives = [.. Of(ManoeuvreFamily.Drive), .. s_stops];

    /// <summary>All rows, in the order of the screen.</summary>
    public static IReadOnlyList<Answer> All { get; } =
    [
        new("ground_gained_m", "ground gained", "m", 3, Better.More, r => r.Shove?.GroundGained) { Manoeuvres = s_shoves, OfOpponent = r => -r.Shove?.GroundGained },
        new("margin_m", "ground between winner and loser", "m", 3, Better.More, r => r.Shove is { } s ? Math.Abs(s.GroundGained) : null) { Manoeuvres = s_shoves, IsForScripts = true },
        new("turned_aside_rad", "turned aside, left positive", "deg", 1, Better.Neither, r => r.Shove?.TurnedAside.First)
        {
            Manoeuvres = s_shoves, OfOpponent = r => r.Shove?.TurnedAside.Opponent, ScreenScale = 180.0 / Math.PI,
        },
        new("first_contact_s", "first touch", "s", 2, Better.Neither, r => r.Shove?.FirstContact) { Manoeuvres = s_shoves, IsForScripts = true },
        new("gives_ground_at_s", "loser gives ground from", "s", 2, Better.Neither, r => r.Shove?.GivesGroundAt) { Manoeuvres = s_shoves, IsForScripts = true },
        new("ground_speed_m_per_s", "speed of the ground given", "m/s", 2, Better.More, r => r.Shove?.GroundSpeed) { Manoeuvres = s_shoves, IsForScripts = true },
        new("ended_at_s", "end of the shove", "s", 2, Better.Neither, r => r.Shove?.EndTime) { Manoeuvres = s_shoves, IsForScripts = true },
        Own("pull_breakaway_n", "pull, breakaway", "N", 2, Better.More, a => a.PullBreakaway) with { Manoeuvres = s_pulls },
        Own("pull_jerk_n", "pull, jerk of the tether", "N", 2, Better.Less, a => a.PullJerk?.Force) with { Manoeuvres = s_pulls },
        Own("pull_plateau_n", "pull, steady", "N", 2, Better.More, a => a.PullPlateau) with
        {
            Manoeuvres = s_pulls, WordsOf = r => r.Answers.IsBouncing ? "pull, mean while it bounces" : "pull, steady",
        },
        new("measured_pull_breakaway_n", "measured, breakaway peak", "N", 2, Better.More, r => MeasuredOverlay.Of(r)?.Breakaway) { Manoeuvres = s_pulls },
        new("measured_pull_plateau_n", "measured, steady", "N", 2, Better.More, r => MeasuredOverlay.Of(r)?.Plateau) { Manoeuvres = s_pulls },
        Own("push_peak_n", "push, peak (rough)", "N", 1, Better.More, a => a.PushPeak) with { Manoeuvres = s_pushes, DigitsOf = v => v >= 100.0 ? 0 : 1 },
        Own("push_plateau_n", "push, steady", "N", 2, Better.More, a => a.PushPlateau) with { Manoeuvres = s_pushes },
        Both("top_speed_m_per_s", "top speed", "m/s", 2, Better.More, a => a.TopSpeed) with { Manoeuvres = s_drives },
        Both("time_to_90_percent_speed_s", "time to 90 % of it", "s", 3, Better.Less, a => a.TimeTo90PercentSpeed) with { Manoeuvres = s_drives },
        Both("time_to_1_m_s", "time for the first metre", "s", 3, Better.Less, a => a.TimeToOneMetre) with { Manoeuvres = s_drives },
        Both("stop_distance_m", "stopping distance", "m", 3, Better.Less, a => a.StopDistance) with { Manoeuvres = s_stops },
        Both("yaw_rate_rad_per_s", "yaw rate", "rad/s", 2, Better.More, a => a.YawRate) with { Manoeuvres = s_turns },
        Both("effective_track_ratio", "effective track ratio", "", 3, Better.Less, a => a.EffectiveTrackRatio) with { Manoeuvres = s_turns },
        Both("scrub_moment_n_m", "scrub moment", "N m", 3, Better.Less, a => a.ScrubMoment) with { Manoeuvres = s_turns },
        Own("turn_current_a", "battery current while it turns", "A", 2, Better.Less, a => a.TurnCurrent) with { Manoeuvres = s_turns },
        Both("chatter_hz", "chatter", "Hz", 0, Better.Less, a => a.Chatter) with { IsToldOfOpponent = true },
        Both("wear_mm3", "tyre wear, all wheels", "mm³", 3, Better.Less, a => 1e9 * a.Wear) with
        {
            IsToldOfOpponent = true, WordsOf = r => IsWearWhole(r) ? "tyre wear, all wheels" : "tyre wear, where known",
        },
        Both("travel_m", "furthest from the start", "m", 3, Better.Less, a => a.Travel) with { DigitsOf = v => v < 0.01 ? 4 : 3 },
        Both("peak_battery_current_a", "peak battery current", "A", 1, Better.Less, a => a.PeakBatteryCurrent) with { IsToldOfOpponent = true },
        Both("lowest_battery_voltage_v", "lowest battery voltage", "V", 2, Better.More, a => a.LowestBatteryVoltage) with { IsToldOfOpponent = true },
        Both("peak_winding_temperature_degc", "hottest winding", "°C", 0, Better.Less, a => a.PeakWindingTemperature) with { IsToldOfOpponent = true },
        Both("charge_used_a_s", "charge used", "mA h", 2, Better.Less, a => a.ChargeUsed) with { IsToldOfOpponent = true, ScreenScale = 1.0 / 3.6 },
        new("energy_residual_ratio", "energy not accounted for", "", 9, Better.Less, r => r.EnergyResidualRatio) { IsForScripts = true },
        new("rhs_evaluations", "evaluations of the equations", "", 0, Better.Less, r => r.RhsEvaluations) { IsForScripts = true },
    ];

    /// <summary>What a sweep of a manoeuvre shows if nothing is asked.</summary>
    public static Answer Default(ManoeuvreKind kind) => Named(ManoeuvreTraits.Of(kind) switch
    {
        { NeedsOpponent: true } => "ground_gained_m",
        { Family: ManoeuvreFamily.Push } => "push_plateau_n",
        { Family: ManoeuvreFamily.Pull } => "pull_plateau_n",
        { Family: ManoeuvreFamily.Stop } => "stop_distance_m",
        { IsOnTheSpot: true } => "yaw_rate_rad_per_s",
        { Family: ManoeuvreFamily.Turn } => "effective_track_ratio",
        _ => kind == ManoeuvreKind.Launch ? "time_to_1_m_s" : "travel_m",
    })!;

    /// <summary>The row of a key, also of "opponent.KEY" and "energy.KEY"; null if there is none.</summary>
    public static Answer? Named(string key) => Find(key) ?? All.Where(a => a.IsToldOfOpponent).Select(OfOpponent).Concat(EnergyWords.Keys.Select(Energy)).FirstOrDefault(a => a.Key == key);

    /// <summary>All that can be asked of a run: its manoeuvre's answers, the opponent's as "opponent.KEY", entries of the energy ledger as "energy.KEY".</summary>
    public static IReadOnlyList<Answer> Askable(ScenarioSettings scenario)
    {
        Answer[] own = [.. All.Where(a => a.IsOf(scenario.Manoeuvre.Kind))];
        return [.. own, .. scenario.Opponent is null ? [] : own.Where(a => a.IsToldOfOpponent).Select(OfOpponent), .. EnergyWords.Keys.Select(Energy)];
    }

    private static Answer? Find(string key) => All.FirstOrDefault(a => a.Key == key);

    private static Answer OfOpponent(Answer answer) => answer with { Key = "opponent." + answer.Key, Words = answer.Words + ", opponent", Of = answer.OfOpponent, WordsOf = null };

    private static Answer Energy(string key) =>
        new("energy." + key, "energy: " + EnergyWords.Of(key), "J", 3, Better.Less, r => r.Ledger.FirstOrDefault(e => e.Key == key)?.Joule) { IsForScripts = true };

    private static ManoeuvreKind[] Of(ManoeuvreFamily family) => [.. Enum.GetValues<ManoeuvreKind>().Where(k => ManoeuvreTraits.Of(k).Family == family)];

    private static bool IsWearWhole(RunResult r) =>
        r.Scenario.Robot.Wheels.Concat(r.Scenario.Opponent?.Robot.Wheels ?? []).All(w => w.Tyre.SpecificWear > 0.0);

    private static Answer Own(string key, string words, string unit, int digits, Better better, Func<RunAnswers, double?> of) => new(key, words, unit, digits, better, r => of(r.Answers));

    private static Answer Both(string key, string words, string unit, int digits, Better better, Func<RunAnswers, double?> of) =>
        Own(key, words, unit, digits, better, of) with { OfOpponent = r => r.Opponent is { } o ? of(o.Answers) : null };
}
