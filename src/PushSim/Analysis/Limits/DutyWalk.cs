using PushSim.Powertrain;
using PushSim.Simulation;

namespace PushSim.Analysis.Limits;

/// <summary>Walks a match piece by piece, none longer than a second: currents of the steady states at the temperatures and the charge reached (push, turn, rest), or
/// the mean over a dash from standstill; the two nodes of each motor and the one of each controller in short steps between.
/// <code>
///   C_w T_w' = i^2 R(T_w) - (T_w - T_c)/R_wc,   C_c T_c' = (T_w - T_c)/R_wc - (T_c - T_air)/R_ca,   C T' = P_loss - (T - T_air)/R_th
/// </code></summary>
internal sealed class DutyWalk
{
    private const double Step = 1.0;

    // What is shorter than this is rounding, no piece of a match [s].
    private const double Least = 1e-9;
    private const int Substeps = 20;

    // A stall that is not at its limit by then never gets there [s].
    private const double LongestStall = 900.0;

    private readonly ScenarioSettings _scenario;
    private readonly LimitCondition _condition;
    private readonly LimitHook _hook;
    private readonly LimitModel<R1> _model;
    private readonly MotorSettings[] _motors;
    private readonly ThermalNodes[] _nodes;
    private readonly double[] _controllers;
    private readonly double _air;

    public DutyWalk(ScenarioSettings scenario, LimitCondition condition, LimitHook hook)
    {
        (_scenario, _condition, _hook) = (scenario, condition, hook);
        _air = scenario.Floor.AirTemperature;
        _motors = [.. scenario.Robot.Controllers.SelectMany(c => c.Motors).Select(m => scenario.Robot.Drives[m.Drive].Motors[m.Motor].Motor)];
        _nodes = [.. _motors.Select(m => new ThermalNodes(m, _air))];
        _controllers = [.. scenario.Robot.Controllers.Select(_ => _air)];
        _model = new LimitModel<R1>(scenario, condition, null, 1.0);
    }

    public DutyHeat Run(DutyPattern pattern)
    {
        List<(Phase Phase, double Length)> pieces = Pieces(pattern);
        int steps = pieces.Count;
        double[] time = new double[steps + 1];
        double[] winding = new double[steps + 1];
        double[] housing = new double[steps + 1];
        double[] controller = new double[steps + 1];
        double[] voltage = new double[steps + 1];
        double capacity = _scenario.Robot.Battery!.Capacity;
        double start = _condition.Charge ?? _scenario.Robot.Battery.InitialCharge;
        double used = 0.0, lowest = double.PositiveInfinity, share = 1.0;
        double? foldBack = null;
        Overheating? hot = null;
        bool isEmpty = false;
        Record(0);
        voltage[0] = Loaded(Phase.Rest, Step).Voltage;
        for (int n = 0; n < steps; n++)
        {
            (Phase phase, double step) = pieces[n];
            (double current, double volts, double[] loss) = Loaded(phase, step);
            for (int s = 0; s < Substeps; s++)
            {
                Warm(step / Substeps, loss);
            }

            used += Math.Max(0.0, current) * step;
            isEmpty |= used > start * capacity;
            lowest = Math.Min(lowest, volts);
            time[n + 1] = n == steps - 1 ? pattern.Length : time[n] + step;
            Record(n + 1);
            hot ??= Hottest() is int m && _nodes[m].Winding > _nodes[m].Limit ? new Overheating(_motors[m].Name, _nodes[m].Limit, time[n + 1]) : null;
            voltage[n + 1] = volts;
            double left = LimitShare();
            share = Math.Min(share, left);
            foldBack ??= left < 1.0 ? time[n + 1] : null;
            _model.SetCharge(Math.Max(0.0, start - (used / capacity)));
        }

        bool hasHeat = _nodes.Any(m => m.IsKnown);
        return new DutyHeat
        {
            Pattern = pattern, Time = time, Winding = winding, Case = housing, Controller = controller, Voltage = voltage,
            PeakWinding = hasHeat ? winding.Max() : null,
            Overheating = hot,
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

    // Round after round, each phase in pieces of a second and what is left of it, until the match ends
    private static List<(Phase Phase, double Length)> Pieces(DutyPattern p)
    {
        (Phase Phase, double Length)[] round = [(Phase.Dash, p.Dash), (Phase.Push, p.Push), (Phase.Turn, p.Turn), (Phase.Rest, p.Rest)];
        List<(Phase Phase, double Length)> pieces = [];
        double left = p.Length;
        while (left > Least)
        {
            foreach ((Phase phase, double length) in round)
            {
                for (double rest = Math.Min(length, left); rest > Least; rest -= Step)
                {
                    double piece = Math.Min(Step, rest);
                    pieces.Add((phase, piece));
                    left -= piece;
                }
            }
        }

        return pieces;
    }

    // The motor with the least room to its limit
    private int? Hottest() => Enumerable.Range(0, _nodes.Length).Where(m => _nodes[m].IsKnown).Select(m => (int?)m).MinBy(m => _nodes[m!.Value].Limit - _nodes[m.Value].Winding);

    private bool HasHeat(int controller) => _scenario.Robot.Controllers[controller].ThermalResistance > 0.0;

    // Battery current [A], voltage [V] and what heats each controller [W] in a phase; sets what heats the motors
    private (double Current, double Voltage, double[] Loss) Loaded(Phase phase, double length)
    {
        double[] copper = new double[_motors.Length];
        double[] loss = new double[_controllers.Length];
        Apply(_model);
        double current = 0.0, voltage = 0.0;
        switch (phase)
        {
            case Phase.Push when StandingPull.Solve(_model, _hook).Steady is { } pull:
                Take(_model, pull.Omega);
                break;
            case Phase.Turn:
                var turning = new LimitModel<R1>(_scenario, _condition, null, 1.0);
                Apply(turning);
                turning.SetCharge(_model.Charge);
                Take(turning, SpotTurn.Solve(turning)?.Spins ?? new double[turning.Drives.Length]);
                break;
            case Phase.Dash:
                var dash = new DashEstimate(_model);
                dash.Run(length);
                (current, voltage) = (dash.Current, dash.LowestVoltage);
                dash.Copper.ToArray().CopyTo(copper, 0);
                dash.Loss.ToArray().CopyTo(loss, 0);
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

        void Take(LimitModel<R1> model, double[] omega)
        {
            R1[] spin = [.. omega.Select(w => (R1)w)];
            model.Torques(spin, new R1[spin.Length]);
            (current, voltage) = (model.BatteryCurrent.Value, model.BusVoltage.Value);
            for (int m = 0; m < copper.Length; m++)
            {
                copper[m] = model.MotorWork[m].CopperPower.Value;
            }

            for (int k = 0; k < loss.Length; k++)
            {
                loss[k] = model.ControllerWork[k].Loss.Value;
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
