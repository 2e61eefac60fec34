using PushSim.Contact;
using PushSim.Numerics;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Faces that are left out because they lie too deep to act: the sums are those of all faces, to the bit.</summary>
public class SkippedFacesTests
{
    [Fact]
    public void Leaving_faces_out_changes_no_bit()
    {
        var random = new Random(5);
        int touching = 0;
        for (int structure = 0; structure < 40; structure++)
        {
            ScenarioSettings s = RandomMatches.Of(structure, end: 0.3);
            (ContactSide<R1> A, ContactSide<R1> B) all = SceneBuilder.Contacts<R1>(s)[0].Pair.Sides;
            ContactPair<R1> pair = SceneBuilder.Contacts<R1>(s)[0].Pair;
            for (int i = 0; i < 400; i++)
            {
                // half of them square to each other and almost level, where the bound of a face is closest to its overlap
                bool isSquare = i % 2 == 0;
                BodyPose<R1> a = Pose(random, 0.0, isSquare);
                BodyPose<R1> b = Pose(random, pair.Reach.Value, isSquare);
                double whole = Sum(all, a, b, ContactSide<R1>.Deep);
                double fewer = Sum(pair.Sides, a, b, pair.Slack(a, b));
                touching += whole > 0.0 ? 1 : 0;
                Assert.Equal(whole <= 0.0, fewer <= 0.0);
                if (whole > 0.0)
                {
                    Assert.Equal(whole, fewer);
                    Assert.Equal(Numbers(all.A.Sums), Numbers(pair.Sides.A.Sums));
                    Assert.Equal(Numbers(all.B.Sums), Numbers(pair.Sides.B.Sums));
                }
            }
        }

        Assert.True(touching > 2000, $"only {touching} poses touch");
    }

    private static double Sum((ContactSide<R1> A, ContactSide<R1> B) sides, in BodyPose<R1> a, in BodyPose<R1> b, R1 slack)
    {
        R1 least = sides.A.LeastOverlap(a, b, slack, ContactSide<R1>.Deep);
        if (least.Value <= 0.0)
        {
            return 0.0;
        }

        least = sides.B.LeastOverlap(b, a, slack, least);
        if (least.Value <= 0.0)
        {
            return 0.0;
        }

        R1 sum = sides.A.Weigh(least) + sides.B.Weigh(least);
        sides.A.Act(1.0 / sum);
        sides.B.Act(1.0 / sum);
        return least.Value;
    }

    private static double[] Numbers(in ContactSums<R1> s) =>
    [
        s.Normal.Value, s.Closing.Value, s.Slip.Value, s.NormalX.Value, s.NormalY.Value,
        s.Own.Fx.Value, s.Own.Fy.Value, s.Own.Fz.Value, s.Own.Roll.Value, s.Own.Pitch.Value, s.Own.Yaw.Value,
        s.Other.Fx.Value, s.Other.Fy.Value, s.Other.Fz.Value, s.Other.Roll.Value, s.Other.Pitch.Value, s.Other.Yaw.Value,
        s.OwnAlong.Yaw.Value, s.OtherAlong.Yaw.Value,
    ];

    private static BodyPose<R1> Pose(Random r, double away, bool isSquare)
    {
        double heading = isSquare ? (0.5 * Math.PI * r.Next(4)) + (1e-4 * r.NextDouble()) : 6.3 * r.NextDouble();
        double tilt = isSquare ? 1e-4 : 0.1;
        double bearing = 6.3 * r.NextDouble();
        double distance = away * (0.4 + (0.6 * r.NextDouble()));
        BodyPose<R1> pose = default;
        pose.X = distance * Math.Cos(bearing);
        pose.Y = distance * Math.Sin(bearing);
        pose.Sine = Math.Sin(heading);
        pose.Cosine = Math.Cos(heading);
        pose.Heave = -0.002 * r.NextDouble();
        pose.Pitch = tilt * (r.NextDouble() - 0.5);
        pose.Roll = tilt * (r.NextDouble() - 0.5);
        pose.Motion.U = r.NextDouble();
        pose.Motion.V = r.NextDouble() - 0.5;
        pose.Motion.R = r.NextDouble();
        return pose;
    }
}
