using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>Finds the modes of a linearised steady turn.</summary>
internal static class TurnModes
{
    // Smaller shares are not told [1].
    private const double LeastShare = 0.05;

    /// <summary>All modes of a Jacobian in typical units, the fastest growing first; one for each pair that swings.</summary>
    public static IReadOnlyList<TurnMode> Of(TurnModel model, Matrix<double> jacobian)
    {
        Evd<double> evd = jacobian.Evd();
        List<TurnMode> modes = [];
        int n = jacobian.RowCount;
        for (int k = 0; k < n; k++)
        {
            Complex value = evd.EigenValues[k];
            bool swings = value.Imaginary != 0.0 && k + 1 < n;
            Complex[] shape = new Complex[model.System.Layout.Count];
            for (int i = 0; i < n; i++)
            {
                shape[model.Moving[i]] = model.Typical[i] * new Complex(evd.EigenVectors[i, k], swings ? evd.EigenVectors[i, k + 1] : 0.0);
            }

            List<(TurnPart Part, double Share)> shares = EnergyShares(model, shape);
            modes.Add(new TurnMode(shares[0].Part, value.Real, Math.Abs(value.Imaginary) / (2.0 * Math.PI), [.. shares.Where(s => s.Share >= LeastShare)]));
            k += swings ? 1 : 0;
        }

        return [.. modes.OrderByDescending(m => m.Growth)];
    }

    // 1/2 m |v|^2 of each part; the tread's share is its motion against the rim
    private static List<(TurnPart Part, double Share)> EnergyShares(TurnModel model, Complex[] y)
    {
        RobotEquations<Numerics.R1> eq = model.System.Equations;
        (double roll, double pitch, double yaw) = ModelBuilder.Inertia(model.Scenario.Robot.Chassis);
        double[] energy = new double[Enum.GetValues<TurnPart>().Length];
        double mass = eq.Body.Mass.Value;
        energy[(int)TurnPart.Drift] = mass * (Square(y[StateLayout.U]) + Square(y[StateLayout.V]));
        energy[(int)TurnPart.Yaw] = yaw * Square(y[StateLayout.YawRate]);
        energy[(int)TurnPart.Bounce] = mass * Square(y[StateLayout.HeaveRate]);
        energy[(int)TurnPart.Pitch] = pitch * Square(y[StateLayout.PitchRate]);
        energy[(int)TurnPart.Roll] = roll * Square(y[StateLayout.RollRate]);
        for (int i = 0; i < eq.Wheels.Length; i++)
        {
            ref readonly Tyres.WheelParameters<Numerics.R1> p = ref eq.Wheels[i];
            int s = eq.Layout.Tread(i);
            int drive = eq.Kinds[i].Shape.Drive;
            Complex rim = drive < 0 ? 0.0 : p.Radius.Value * p.DriveRatio.Value * y[eq.Layout.FirstDrive + drive];
            Complex wx = y[StateLayout.U] - (p.Y.Value * y[StateLayout.YawRate]) - (eq.Body.Height.Value * y[StateLayout.PitchRate]) - rim;
            Complex wy = p.LateralRatio.Value * (y[StateLayout.V] + (p.X.Value * y[StateLayout.YawRate]) + (eq.Body.Height.Value * y[StateLayout.RollRate]));
            energy[(int)TurnPart.Ring] += p.TreadMass.Value * (Square(y[s] - wx) + Square(y[s + 1] - wy));
        }

        for (int d = 0; d < eq.Drives.Length; d++)
        {
            energy[(int)TurnPart.Spin] += eq.Drives[d].Inertia.Value * Square(y[eq.Layout.FirstDrive + d]);
        }

        double sum = energy.Sum();
        return [.. energy.Select((e, i) => ((TurnPart)i, sum > 0.0 ? e / sum : 0.0)).OrderByDescending(s => s.Item2)];
    }

    private static double Square(Complex c) => (c.Real * c.Real) + (c.Imaginary * c.Imaginary);
}
