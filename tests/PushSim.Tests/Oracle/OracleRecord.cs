namespace PushSim.Tests.Oracle;

/// <summary>History of one robot: one row per sample, columns by name.</summary>
internal sealed class OracleRecord(int samples)
{
    private readonly Dictionary<string, double[]> _columns = [];

    public double[] Time { get; } = new double[samples];
    public int Count { get; private set; }

    public double[] this[string key] => _columns[key];

    public void Add(double t, OracleRobot robot, double tether, double contact, double lift)
    {
        Time[Count] = t;
        Set("x", robot.X);
        Set("y", robot.Y);
        Set("psi", robot.Psi);
        Set("u", robot.U);
        Set("v", robot.V);
        Set("r", robot.R);
        Set("z", robot.Z);
        Set("theta", robot.Theta);
        Set("phi", robot.Phi);
        Set("tether", tether);
        Set("contact", contact);
        Set("lift", lift);
        Set("bus_v", robot.Battery?.Voltage ?? 0.0);
        Set("bus_a", robot.Battery?.Current ?? 0.0);
        Set("worn", robot.Wheels.Sum(w => w.Worn));
        Set("charge", robot.Battery?.ChargeUsed ?? 0.0);
        for (int i = 0; i < robot.Wheels.Length; i++)
        {
            OracleWheel w = robot.Wheels[i];
            Set("load " + i, w.Load);
            Set("fx " + i, w.ForceX);
            Set("fy " + i, w.ForceY);
            Set("spin " + i, robot.Spin(i));
        }
        for (int i = 0; i < robot.Drives.Length; i++)
        {
            OracleDrive d = robot.Drives[i];
            Set("omega " + i, d.Speed);
            Set("gear " + i, d.Friction);
            for (int k = 0; k < d.Motors.Length; k++)
            {
                Set($"amp {i} {k}", d.Motors[k].Current);
                Set($"winding {i} {k}", d.Motors[k].Winding);
            }
        }
        Count++;
    }

    private void Set(string key, double value)
    {
        if (!_columns.TryGetValue(key, out double[]? column))
        {
            column = new double[samples];
            _columns.Add(key, column);
        }
        column[Count] = value;
    }
}
