using PushSim.Analysis.Fit;

namespace PushSim.Words.Answers;

/// <summary>Every number that a run can answer, one row each. Screen, JSON, CSV, sweeps, lists of --ask and the page of answers come from it.</summary>
public static class AnswerCatalogue
{
    /// <summary>Key of the frequency of chatter, for which a turn is looked at closer.</summary>
    public const string ChatterKey = "chatter_hz";

    /// <summary>Movement that nobody would see: told as none [m].</summary>
    internal const double StandsStill = 1e-6;

    // Of a manoeuvre that it belongs to, the verdict says anyway that it did not come about
    internal const string Told = " ";

    private static readonly ManoeuvreKind[] s_shoves = [.. Enum.GetValues<ManoeuvreKind>().Where(k => ManoeuvreTraits.Of(k).NeedsOpponent)];

    private static readonly ManoeuvreKind[] s_pulls = Of(ManoeuvreFamily.Pull);

    private static readonly ManoeuvreKind[] s_pushes = Of(ManoeuvreFamily.Push);

    private static readonly ManoeuvreKind[] s_turns = Of(ManoeuvreFamily.Turn);

    private static readonly ManoeuvreKind[] s_stops = Of(ManoeuvreFamily.Stop);

    private static readonly ManoeuvreKind[] s_drives = [.. Of(ManoeuvreFamily.Drive), .. s_stops];

    /// <summary>All rows, in the order of the screen.</summary>
    public static IReadOnlyList<Answer> All { get; } =
    [
        new("ground_gained_m", "ground gained", "m", 3, Better.More, r => r.Shove?.GroundGained) { Manoeuvres = s_shoves, OfOpponent = r => -r.Shove?.GroundGained, Says = "{0} gains {1} of ground", SaysBelowZero = "{0} loses {1} of ground" },
        new("ground_rate_m_per_s", "ground gained a second", "m/s", 3, Better.More, r => r.Shove is { FirstContact: double touch } s && s.EndTime > touch ? s.GroundGained / (s.EndTime - touch) : null)
        {
            Manoeuvres = s_shoves, IsForScripts = true, Says = "{0} gains ground at {1}", SaysBelowZero = "{0} loses ground at {1}", SaysNone = "they never touch",
        },
        new("margin_m", "ground between winner and loser", "m", 3, Better.More, r => r.Shove is { } s ? Math.Abs(s.GroundGained) : null) { Manoeuvres = s_shoves, IsForScripts = true },
        new("turned_aside_rad", "turned aside, left positive", "deg", 1, Better.Neither, r => r.Shove?.TurnedAside.First)
        {
            Manoeuvres = s_shoves, OfOpponent = r => r.Shove?.TurnedAside.Opponent, ScreenScale = 180.0 / Math.PI, IsSided = true,
            Says = "{0} is turned {1} to its left", SaysBelowZero = "{0} is turned {1} to its right",
        },
        new("first_contact_s", "first touch", "s", 2, Better.Neither, r => r.Shove?.FirstContact) { Manoeuvres = s_shoves, IsForScripts = true, Says = "the robots touch after {1}", SaysNone = Told },
        new("gives_ground_at_s", "loser gives ground from", "s", 2, Better.Neither, r => r.Shove?.GivesGroundAt) { Manoeuvres = s_shoves, IsForScripts = true, Says = "the loser gives ground from {1} on", SaysNone = "nobody gives ground" },
        new("ground_speed_m_per_s", "speed of the ground given", "m/s", 2, Better.More, r => r.Shove?.GroundSpeed) { Manoeuvres = s_shoves, IsForScripts = true, Says = "the loser gives ground at {1}" },
        new("ended_at_s", "end of the shove", "s", 2, Better.Neither, r => r.Shove?.EndTime) { Manoeuvres = s_shoves, IsForScripts = true, Says = "the shove ends after {1}" },
        Own("pull_breakaway_n", "pull, breakaway", "N", 2, Better.More, a => a.PullBreakaway) with { Manoeuvres = s_pulls, Says = "{2} tyres break away at {1}", SaysNone = "the breakaway of {2} tyres is not told" },
        Own("pull_jerk_n", "pull, jerk of the tether", "N", 2, Better.Less, a => a.PullJerk?.Force) with { Manoeuvres = s_pulls, Says = "the tether jerks with {1}", SaysNone = "the tether does not jerk" },
        Own("pull_plateau_n", "pull, steady", "N", 2, Better.More, a => a.PullPlateau) with
        {
            Manoeuvres = s_pulls, Says = "{0} pulls {1}", SaysNone = Told, WordsOf = r => r.Answers.IsBouncing ? "pull, mean while it bounces" : "pull, steady",
        },
        new("measured_pull_breakaway_n", "measured, breakaway peak", "N", 2, Better.More, r => MeasuredOverlay.Of(r)?.Breakaway) { Manoeuvres = s_pulls, Says = "its peak was {1}", SaysNone = "no measured peak is told" },
        new("measured_pull_plateau_n", "measured, steady", "N", 2, Better.More, r => MeasuredOverlay.Of(r)?.Plateau) { Manoeuvres = s_pulls, Says = "the load cell measured {1}", SaysNone = "no measured pull is told" },
        Own("push_peak_n", "push, peak (rough)", "N", 1, Better.More, a => a.PushPeak) with { Manoeuvres = s_pushes, DigitsOf = v => v >= 100.0 ? 0 : 1, Says = "{2} push peaks at {1}", SaysNone = Told },
        Own("push_plateau_n", "push, steady", "N", 2, Better.More, a => a.PushPlateau) with { Manoeuvres = s_pushes, Says = "{0} pushes with {1}", SaysBelowZero = "{0} is pushed from behind with {1}", SaysNone = Told },
        Both("top_speed_m_per_s", "top speed", "m/s", 2, Better.More, a => a.TopSpeed) with { Manoeuvres = s_drives, Says = "{0} reaches {1}" },
        Both("time_to_90_percent_speed_s", "time to 90 % of top speed", "s", 3, Better.Less, a => a.TimeTo90PercentSpeed) with { Manoeuvres = s_drives, Says = "{0} reaches 90 % of its top speed after {1}", SaysNone = Told },
        Both("time_to_1_m_s", "time for the first metre", "s", 3, Better.Less, a => a.TimeToOneMetre) with { Manoeuvres = s_drives, Says = "{0} covers the first metre in {1}", SaysNone = "{0} does not cover a metre" },
        Both("stop_distance_m", "stopping distance", "m", 3, Better.Less, a => a.StopDistance) with { Manoeuvres = s_stops, Says = "{0} comes to a stand within {1}", SaysNone = Told },
        Both("yaw_rate_rad_per_s", "yaw rate", "rad/s", 2, Better.More, a => a.YawRate) with { Manoeuvres = s_turns, IsSided = true, Says = "{0} turns at {1} to the left", SaysBelowZero = "{0} turns at {1} to the right" },
        Both("effective_track_ratio", "effective track ratio", "", 3, Better.Less, a => a.EffectiveTrackRatio) with { Manoeuvres = s_turns, Says = "scrub costs {0} a factor of {1} in turning rate", SaysNone = "what scrub costs is not told" },
        Both("scrub_moment_n_m", "scrub moment", "N m", 3, Better.Less, a => a.ScrubMoment) with { Manoeuvres = s_turns, Says = "scrub holds {0} back with {1}" },
        Own("turn_current_a", "battery current while it turns", "A", 2, Better.Less, a => a.TurnCurrent) with { Manoeuvres = s_turns, Says = "{0} draws {1} from its battery" },
        new(ChatterKey, "chatter", "Hz", 0, Better.Less, r => r.Chatter.Frequency)
        {
            OfOpponent = r => r.Opponent is { } o ? ChatterVerdict.OfRun(r.Status, o.Answers).Frequency : null, IsToldOfOpponent = true, Says = "{2} tyres chatter at {1}", SaysNone = "no chatter of {2} tyres is found",
        },
        new("most_air_share", "most time of a wheel off the floor, since the touch", "%", 1, Better.Less, r => r.Hops?.MostAirShare)
        {
            Manoeuvres = s_pushes, OfOpponent = r => r.Opponent?.Hops?.MostAirShare, IsToldOfOpponent = true, ScreenScale = 100.0, IsForScripts = true,
            Says = "a wheel of {0} is off the floor {1} of the time", SaysNone = "no wheel of {0} hops",
        },
        Both("wear_mm3", "tyre wear, all wheels", "mm³", 3, Better.Less, a => 1e9 * a.Wear) with
        {
            IsToldOfOpponent = true, Says = "{2} tyres lose {1}", SaysNone = "the wear of {2} tyres is not known", WordsOf = r => IsWearWhole(r) ? "tyre wear, all wheels" : "tyre wear, where known",
        },
        Both("travel_m", "furthest from the start", "m", 3, Better.Less, a => a.Travel) with { DigitsOf = v => v < StandsStill ? 0 : v < 1e-4 ? 6 : v < 0.01 ? 4 : 3, IsForStaying = true, Says = "{0} gets {1} from its start" },
        Both("peak_battery_current_a", "peak battery current", "A", 1, Better.Less, a => a.PeakBatteryCurrent) with { IsToldOfOpponent = true, Says = "{2} battery current peaks at {1}", SaysNone = "{0} has no battery" },
        Both("lowest_battery_voltage_v", "lowest battery voltage", "V", 2, Better.More, a => a.LowestBatteryVoltage) with { IsToldOfOpponent = true, Says = "{2} battery falls to {1}", SaysNone = "{0} has no battery" },
        Both("peak_winding_temperature_degc", "hottest winding", "°C", 0, Better.Less, a => a.PeakWindingTemperature) with { IsToldOfOpponent = true, Says = "{2} hottest winding reaches {1}", SaysNone = "{2} motors have no thermal data" },
        Both("peak_battery_temperature_degc", "battery, hottest", "°C", 1, Better.Less, a => a.PeakBatteryTemperature) with { IsToldOfOpponent = true, Says = "{2} battery warms to {1}", SaysNone = "{2} battery has no thermal data" },
        Both("charge_used_a_s", "charge used", "mA h", 2, Better.Less, a => a.ChargeUsed) with { IsToldOfOpponent = true, ScreenScale = 1.0 / 3.6, Says = "{0} takes {1} from its battery", SaysNone = "{0} has no battery" },
        new("energy_residual_ratio", "energy not accounted for", "", 9, Better.Less, r => r.EnergyResidualRatio) { IsForScripts = true },
        new("rhs_evaluations", "evaluations of the equations", "", 0, Better.Less, r => r.RhsEvaluations) { IsForScripts = true },
    ];

    /// <summary>What a sweep of a manoeuvre shows if nothing is asked; the last says what is best.</summary>
    public static IReadOnlyList<Answer> Defaults(ManoeuvreKind kind) => ManoeuvreTraits.Of(kind).NeedsOpponent ? [Usual(kind)[0], Named("ground_rate_m_per_s")!] : [Usual(kind)[0]];

    /// <summary>What the verdict of a scenario must tell: what its file asks, else what is usual for its manoeuvre.</summary>
    public static IReadOnlyList<Answer> Asked(ScenarioSettings scenario) => scenario.Ask.Count == 0 ? Usual(scenario.Manoeuvre.Kind) : [.. scenario.Ask.Select(Named).OfType<Answer>()];

    private static IReadOnlyList<Answer> Usual(ManoeuvreKind kind) => [.. (ManoeuvreTraits.Of(kind) switch
    {
        { NeedsOpponent: true } => (string[])["ground_gained_m"],
        { Family: ManoeuvreFamily.Push } => ["push_plateau_n"],
        { IsDragged: true } => ["pull_plateau_n", "pull_breakaway_n"],
        { Family: ManoeuvreFamily.Pull } => ["pull_plateau_n"],
        { Family: ManoeuvreFamily.Stop } => ["stop_distance_m"],
        { IsOnTheSpot: true } => ["yaw_rate_rad_per_s"],
        { Family: ManoeuvreFamily.Turn } => ["effective_track_ratio", "yaw_rate_rad_per_s"],
        _ => kind == ManoeuvreKind.Launch ? ["time_to_1_m_s", "top_speed_m_per_s", "time_to_90_percent_speed_s"] : ["travel_m"],
    }).Select(k => Named(k)!)];

    /// <summary>The row of a key, also of "opponent.KEY" and "energy.KEY"; null if there is none.</summary>
    public static Answer? Named(string key) => Find(key) ?? All.Where(a => a.IsToldOfOpponent).Select(OfOpponent).Concat(EnergyWords.Keys.Select(Energy)).FirstOrDefault(a => a.Key == key);

    /// <summary>All that can be asked of a run: its manoeuvre's answers, the opponent's as "opponent.KEY", entries of the energy ledger as "energy.KEY".</summary>
    public static IReadOnlyList<Answer> Askable(ScenarioSettings scenario)
    {
        Answer[] own = [.. All.Where(a => a.IsOf(scenario.Manoeuvre.Kind))];
        return [.. own, .. scenario.Opponent is null ? [] : own.Where(a => a.IsToldOfOpponent).Select(OfOpponent), .. EnergyWords.Keys.Select(Energy)];
    }

    private static Answer? Find(string key) => All.FirstOrDefault(a => a.Key == key);

    private static Answer OfOpponent(Answer answer) => answer with { Key = "opponent." + answer.Key, Words = answer.Words + ", opponent", Of = answer.OfOpponent, WordsOf = null, IsOpponents = true };

    private static Answer Energy(string key) =>
        new("energy." + key, "energy: " + EnergyWords.Of(key), "J", 3, Better.Less, r => r.Ledger.FirstOrDefault(e => e.Key == key)?.Joule) { IsForScripts = true };

    private static ManoeuvreKind[] Of(ManoeuvreFamily family) => [.. Enum.GetValues<ManoeuvreKind>().Where(k => ManoeuvreTraits.Of(k).Family == family)];

    private static bool IsWearWhole(RunResult r) =>
        r.Scenario.Robot.Wheels.Concat(r.Scenario.Opponent?.Robot.Wheels ?? []).All(w => w.Tyre.SpecificWear > 0.0);

    private static Answer Own(string key, string words, string unit, int digits, Better better, Func<RunAnswers, double?> of) => new(key, words, unit, digits, better, r => of(r.Answers));

    private static Answer Both(string key, string words, string unit, int digits, Better better, Func<RunAnswers, double?> of) =>
        Own(key, words, unit, digits, better, of) with { OfOpponent = r => r.Opponent is { } o ? of(o.Answers) : null };
}
