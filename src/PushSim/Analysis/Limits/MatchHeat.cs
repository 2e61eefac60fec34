using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>
/// Walks a match second by second: currents of the steady states at the temperatures and the charge reached (push, dash, turn, rest), the two
/// nodes of each motor and the one of each controller in short steps between.
/// <code>
///   C_w T_w' = i^2 R(T_w) - (T_w - T_c)/R_wc,   C_c T_c' = (T_w - T_c)/R_wc - (T_c - T_air)/R_ca,   C T' = P_loss - (T - T_air)/R_th
/// </code>
/// </summary>
internal sealed class MatchHeat
{
    private const double Step = 1.0;
    private const int Substeps = 20;

    // A stall that is not at its limit by then never gets there [s].
    private const double LongestStall = 900.0;

    // Speeds within a dash at which currents are taken, by Gauss over its second.
    private static readonly double[] s_moments = [0.1127, 0.5, 0.8873];
    private static readonly double[] s_weights = [5.0 / 18.0, 8.0 / 18.0, 5.0 / 18.0];

    private readonly ScenarioSettings _scenario;
    private readonly LimitCondition _condition;
    private readonly LimitHook _hook;
    private readonly LimitModel<R1> _model;
    private readonly MotorSettings[] _motors;
    private readonly ThermalNodes[] _nodes;
    private readonly double[] _controllers;
    private readonly double _air;

    public MatchHeat(ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        (_scenario, _condition, _hook) = (scenario, condition, hook);
        _air = scenario.Floor.AirTemperature;
        _motors = [.. scenario.Robot.Controllers.SelectMany(c => c.Motors).Select(m => scenario.Robot.Drives[m.Drive].Motors[m.Motor].Motor)];
        _nodes = [.. _motors.Select(m => new ThermalNodes(m, _air))];
        _controllers = [.. scenario.Robot.Controllers.Select(_ => _air)];
        _model = new LimitModel<R1>(scenario, condition, null, 1.0);
    }

    public MatchResult Run(DutyPattern pattern)
    {
        int steps = (int)Math.Ceiling(pattern.Length / Step);
        double[] time = new double[steps + 1];
        double[] winding = new double[steps + 1];
        double[] housing = new double[steps + 1];
        double[] controller = new double[steps + 1];
        double[] voltage = new double[steps + 1];
        double capacity = _scenario.Robot.Battery!.Capacity;
        double start = _condition.Charge ?? _scenario.Robot.Battery.InitialCharge;
        double used = 0.0, lowest = double.PositiveInfinity, share = 1.0;
        double? foldBack = null;
        bool isEmpty = false;
        Record(0);
        voltage[0] = Loaded(Phase.Rest, null).Voltage;
        var launch = new LaunchEstimate<R1>(new LimitModel<R1>(_scenario, _condition, null, 1.0));
        (double Top, double Start)? dash = launch.Starts ? (launch.TopSpeed.Value, launch.Acceleration(0.0).Value) : null;
        for (int n = 0; n < steps; n++)
        {
            (double current, double volts, double[] loss) = Loaded(PhaseAt(pattern, n * Step), dash);

            // the last step ends with the match
            double step = Math.Min(Step, pattern.Length - (n * Step));
            for (int s = 0; s < Substeps; s++)
            {
                Warm(step / Substeps, loss);
            }

            used += Math.Max(0.0, current) * step;
            isEmpty |= used > start * capacity;
            lowest = Math.Min(lowest, volts);
            time[n + 1] = Math.Min(pattern.Length, (n + 1) * Step);
            Record(n + 1);
            voltage[n + 1] = volts;
            double left = LimitShare();
            share = Math.Min(share, left);
            foldBack ??= left < 1.0 ? time[n + 1] : null;
            _model.SetCharge(Math.Max(0.0, start - (used / capacity)));
        }

        bool hasHeat = _nodes.Any(m => m.IsKnown);
        return new MatchResult
        {
            Pattern = pattern, Time = time, Winding = winding, Case = housing, Controller = controller, Voltage = voltage,
            PeakWinding = hasHeat ? winding.Max() : null,
            WindingRoom = hasHeat ? _nodes.Where(m => m.IsKnown).Min(m => m.Limit - m.Peak) : null,
            StallTimeToLimit = StallTime(),
            FoldBackAt = foldBack,
            LeastLimitShare = share,
            LowestVoltage = lowest,
            ChargeUsed = used,
            ChargeShare = used / capacity,
            RunsEmpty = isEmpty,
        };

        void Record(int i)
        {
            winding[i] = _nodes.Where(m => m.IsKnown).Select(m => m.Winding).DefaultIfEmpty(double.NaN).Max();
            housing[i] = _nodes.Where(m => m.IsKnown).Select(m => m.Case).DefaultIfEmpty(double.NaN).Max();
            controller[i] = _controllers.Where((_, k) => HasHeat(k)).DefaultIfEmpty(double.NaN).Max();
        }
    }

    private enum Phase
    {
        Push, Dash, Turn, Rest,
    }

    private static Phase PhaseAt(DutyPattern p, double t)
    {
        double round = p.Push + p.Dash + p.Turn + p.Rest;
        double at = round > 0.0 ? t % round : 0.0;
        return at < p.Dash ? Phase.Dash : at < p.Dash + p.Push ? Phase.Push : at < p.Dash + p.Push + p.Turn ? Phase.Turn : Phase.Rest;
    }

    private bool HasHeat(int controller) => _scenario.Robot.Controllers[controller].ThermalResistance > 0.0;

    // Battery current [A], voltage [V] and what heats each controller [W] in a phase; sets what heats the motors
    private (double Current, double Voltage, double[] Loss) Loaded(Phase phase, (double Top, double Start)? dash)
    {
        double[] copper = new double[_motors.Length];
        double[] loss = new double[_controllers.Length];
        Apply(_model);
        double current = 0.0, voltage = 0.0;
        switch (phase)
        {
            case Phase.Push when StandingPull.Solve(_model, _hook).Steady is { } pull:
                Take(_model, pull.Omega, 1.0);
                break;
            case Phase.Turn:
                var turning = new LimitModel<R1>(_scenario, _condition, null, 1.0);
                Apply(turning);
                turning.SetCharge(_model.Charge);
                Take(turning, SpotTurn.Solve(turning)?.Spins ?? new double[turning.Drives.Length], 1.0);
                break;
            case Phase.Dash when dash is { } d:
                for (int k = 0; k < s_moments.Length; k++)
                {
                    double speed = d.Top * (1.0 - Math.Exp(-s_moments[k] * Step * d.Start / d.Top));
                    Take(_model, [.. _model.WheelsOf.Select((_, d) => speed / _model.Lever(d).Value)], s_weights[k]);
                }

                break;
            default:
                voltage = _model.RestVoltage.Value;
                break;
        }

        for (int m = 0; m < copper.Length; m++)
        {
            _nodes[m].Power = copper[m];
        }

        return (current, voltage, loss);

        void Take(LimitModel<R1> model, double[] omega, double weight)
        {
            R1[] spin = [.. omega.Select(w => (R1)w)];
            model.Torques(spin, new R1[spin.Length]);
            current += weight * model.BatteryCurrent.Value;
            voltage = voltage == 0.0 ? model.BusVoltage.Value : Math.Min(voltage, model.BusVoltage.Value);
            for (int m = 0; m < copper.Length; m++)
            {
                copper[m] += weight * model.MotorWork[m].CopperPower.Value;
            }

            for (int k = 0; k < loss.Length; k++)
            {
                loss[k] += weight * model.ControllerWork[k].Loss.Value;
            }
        }
    }

    private void Apply(LimitModel<R1> model)
    {
        for (int m = 0; m < _nodes.Length; m++)
        {
            if (_nodes[m].IsKnown)
            {
                model.SetWinding(m, _nodes[m].Winding);
            }
        }

        for (int k = 0; k < _controllers.Length; k++)
        {
            if (HasHeat(k))
            {
                model.SetController(k, _controllers[k]);
            }
        }
    }

    private void Warm(double dt, double[] loss)
    {
        foreach (ThermalNodes node in _nodes)
        {
            node.Warm(dt);
        }

        for (int k = 0; k < _controllers.Length; k++)
        {
            ControllerSettings c = _scenario.Robot.Controllers[k];
            if (HasHeat(k))
            {
                _controllers[k] += dt * (loss[k] - ((_controllers[k] - _air) / c.ThermalResistance)) / c.HeatCapacity;
            }
        }
    }

    private double LimitShare()
    {
        double share = 1.0;
        for (int k = 0; k < _controllers.Length; k++)
        {
            ControllerSettings c = _scenario.Robot.Controllers[k];
            if (HasHeat(k))
            {
                share = Math.Min(share, Math.Clamp((c.ShutDownTemperature - _controllers[k]) / (c.ShutDownTemperature - c.FoldBackTemperature), 0.0, 1.0));
            }
        }

        return share;
    }

    // All drives locked at this throttle, from cold, until a winding is at its limit
    private double? StallTime()
    {
        var model = new LimitModel<R1>(_scenario, _condition, null, 1.0);
        ThermalNodes[] nodes = [.. _motors.Select(m => new ThermalNodes(m, _air))];
        if (!nodes.Any(n => n.IsKnown))
        {
            return null;
        }

        double dt = 0.02 * nodes.Where(n => n.IsKnown).Min(n => n.WindingTime);
        R1[] still = new R1[model.Drives.Length];
        R1[] torque = new R1[model.Drives.Length];
        for (double t = 0.0; t < LongestStall; t += dt)
        {
            for (int m = 0; m < nodes.Length; m++)
            {
                if (nodes[m].IsKnown)
                {
                    model.SetWinding(m, nodes[m].Winding);
                }
            }

            model.Torques(still, torque);
            for (int m = 0; m < nodes.Length; m++)
            {
                nodes[m].Power = model.MotorWork[m].CopperPower.Value;
                nodes[m].Warm(dt);
                if (nodes[m].IsKnown && nodes[m].Winding >= nodes[m].Limit)
                {
                    return t + dt;
                }
            }
        }

        return null;
    }
}
