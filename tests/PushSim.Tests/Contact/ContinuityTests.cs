using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>
/// Force and moment have no jump anywhere: along a sweep the largest change between neighbours halves when the step does.
/// A jump would stay. Computed here.
/// </summary>
public class ContinuityTests
{
    private const int Steps = 20_000;

    public static TheoryData<string, int> Sweeps
    {
        get
        {
            TheoryData<string, int> rows = [];
            foreach (string name in new[] { "yaw", "yawed offset", "offset", "height", "gap", "tilted gap", "circle", "pitch" })
            {
                foreach (int which in new[] { 0, 1, 8, 12, 15, 18, 19, 24 })
                {
                    rows.Add(name, which);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Sweeps))]
    public void Largest_change_halves_with_the_step(string sweep, int which)
    {
        double[] coarse = LargestChange(sweep, which, Steps, out double most);
        double[] fine = LargestChange(sweep, which, 2 * Steps, out _);
        Assert.True(most > 1.0, $"greatest force of the sweep {most} N");
        for (int c = 0; c < coarse.Length; c++)
        {
            Assert.True(fine[c] <= (0.6 * coarse[c]) + 1e-9, $"component {c}: {coarse[c]} then {fine[c]} per step, force up to {most} N");
        }
    }

    // The centre of a strong contact does not jump either; that of a vanishing one means nothing.
    [Theory]
    [InlineData(0)]
    [InlineData(2)]
    [InlineData(8)]
    [InlineData(15)]
    public void Moment_of_the_centre_is_continuous_in_yaw(int which)
    {
        double coarse = LargestCentre(which, Steps);
        double fine = LargestCentre(which, 2 * Steps);
        Assert.True(fine <= 0.6 * coarse, $"{coarse} then {fine} N m per step");
    }

    private static double LargestCentre(int which, int steps)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        double most = 0.0, lastX = 0.0, lastY = 0.0;
        for (int i = 0; i <= steps; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = At("yaw", (double)i / steps);
            Touching.Evaluate(pair, p, q);
            double x = pair.NormalForce.Value * pair.CentreX.Value;
            double y = pair.NormalForce.Value * pair.CentreY.Value;
            most = i == 0 ? 0.0 : Math.Max(most, Math.Abs(x - lastX) + Math.Abs(y - lastY));
            lastX = x;
            lastY = y;
        }

        return most;
    }

    private static double[] LargestChange(string sweep, int which, int steps, out double most)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var z = new R1[pair.BristleCount];
        var change = new double[12];
        double[]? last = null;
        most = 0.0;
        for (int i = 0; i <= steps; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = At(sweep, (double)i / steps);
            Array.Fill(z, 0.0002);
            Touching.Outcome o = Touching.Evaluate(pair, p, q, 0.0, z);
            double[] now = [.. o.OnA, .. o.OnB];
            most = Math.Max(most, pair.NormalForce.Value);
            for (int c = 0; c < 12 && last is not null; c++)
            {
                change[c] = Math.Max(change[c], Math.Abs(now[c] - last[c]));
            }

            last = now;
        }

        return change;
    }

    // Two poses at a place of the sweep, 0 to 1. Nothing moves, so friction depends on the bristle alone.
    private static (BodyPose<R1> P, BodyPose<R1> Q) At(string sweep, double t)
    {
        double wide = (2.0 * t) - 1.0;
        BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0);
        BodyPose<R1> q = Touching.Facing(0.19, 0.0);
        switch (sweep)
        {
            case "yaw":
                return (p, Touching.Still(0.185, 0.013, Math.PI * wide));
            case "yawed offset":
                return (p, Touching.Still(0.19, 0.22 * wide, Math.PI - 0.2));
            case "offset":
                q.Y = 0.22 * wide;
                break;
            case "height":
                q.X = 0.185;
                q.Heave = 0.08 * wide;
                break;
            case "gap":
                q.X = 0.14 + (0.08 * t);
                break;
            case "tilted gap":
                q.X = 0.14 + (0.08 * t);
                q.Pitch = 0.03;
                q.Roll = 0.04;
                p.Roll = 0.02;
                q.Heave = 0.001;
                break;
            case "circle":
                q.X = 0.19 * Math.Cos(Math.PI * wide);
                q.Y = 0.19 * Math.Sin(Math.PI * wide);
                break;
            default:
                q.X = 0.185;
                q.Pitch = 0.1 * wide;
                p.Pitch = 0.02;
                break;
        }

        return (p, q);
    }
}
