using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>
/// Force and moment have no jump anywhere: along a sweep the largest change between neighbours falls as the step does.
/// A jump would stay. Computed here.
/// </summary>
public class ContinuityTests
{
    private const int Steps = 16_000;

    // with PUSHSIM_CONTACT_SWEEPS all pairs of bodies go through all sweeps
    public static TheoryData<string, int> Sweeps
    {
        get
        {
            TheoryData<string, int> rows = [];
            // wheels on a box, and on wheels
            const int Wheels = 6;
            const int Rims = 54;
            (string Name, int Usual)[] sweeps =
            [
                ("yaw", 27), ("yawed offset", 45), ("offset", 9), ("height", 18), ("gap", 3), ("tilted gap", 24), ("circle", 1), ("pitch", 26), ("roll", 27), ("over", 32),
            ];
            bool all = Environment.GetEnvironmentVariable("PUSHSIM_CONTACT_SWEEPS") is not null;
            foreach ((string name, int usual) in sweeps)
            {
                foreach (int which in all ? Enumerable.Range(0, Touching.PairCount) : [usual, Wheels, Rims])
                {
                    rows.Add(name, which);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Sweeps))]
    public void Largest_change_falls_with_the_step(string sweep, int which)
    {
        double[] coarse = LargestChange(sweep, which, Steps, out double most);
        double[] fine = LargestChange(sweep, which, 4 * Steps, out _);
        Assert.True(most > 1.0, $"greatest force of the sweep {most} N");
        for (int c = 0; c < coarse.Length; c++)
        {
            Assert.True(fine[c] <= (0.4 * coarse[c]) + 1e-9, $"component {c}: {coarse[c]} then {fine[c]} per step, force up to {most} N");
        }
    }

    private static double[] LargestChange(string sweep, int which, int steps, out double most)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        Touching.Spin(pair);
        var z = new R1[ContactPair<R1>.BristleCount];
        var change = new double[9];
        double[]? last = null;
        most = 0.0;
        for (int i = 0; i <= steps; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = At(sweep, (double)i / steps);
            Array.Fill(z, 0.0002);
            Touching.Outcome o = Touching.Evaluate(pair, p, q, 0.0, z);
            double[] now = [.. o.Force, .. o.OnA, .. o.OnB];
            most = Math.Max(most, pair.NormalForce.Value);
            for (int c = 0; c < 9 && last is not null; c++)
            {
                change[c] = Math.Max(change[c], Math.Abs(now[c] - last[c]));
            }

            last = now;
        }

        return change;
    }

    // s runs from 0 to 1 along the sweep
    private static (BodyPose<R1> A, BodyPose<R1> B) At(string sweep, double s)
    {
        (double x, double y, double heading, double pitch, double roll, double up) = sweep switch
        {
            "yaw" => (0.19, 0.02, 3.0 + (0.6 * s), 0.0, 0.0, 0.0),
            "yawed offset" => (0.19, -0.2 + (0.4 * s), 3.3, 0.0, 0.0, 0.003),
            "offset" => (0.196, -0.2 + (0.4 * s), Math.PI, 0.0, 0.0, 0.0),
            "height" => (0.196, 0.01, Math.PI, 0.0, 0.0, -0.06 + (0.12 * s)),
            "gap" => (0.21 - (0.03 * s), 0.02, 3.0, 0.0, 0.0, 0.002),
            "tilted gap" => (0.21 - (0.03 * s), 0.02, 3.0, 0.1, -0.2, 0.004),
            "circle" => (0.19 * Math.Cos(6.0 * s), 0.19 * Math.Sin(6.0 * s), Math.PI + (6.0 * s), 0.0, 0.02, 0.001),
            "pitch" => (0.19, 0.01, Math.PI, -1.2 + (2.4 * s), 0.0, 0.0),
            "roll" => (0.19, 0.01, Math.PI, 0.03, -1.2 + (2.4 * s), 0.0),
            _ => (0.22 - (0.3 * s), 0.03, 3.0, 0.02, 0.01, 0.043),
        };
        BodyPose<R1> a = Touching.Still(0.0, 0.0, 0.05, 0.01, 0.02);
        BodyPose<R1> b = Touching.Still(x, y, heading, pitch, roll, Touching.Centre + up);
        (a.VX, a.VZ, b.WZ, b.WY) = (0.3, 0.02, 0.5, -0.4);
        return (a, b);
    }
}
