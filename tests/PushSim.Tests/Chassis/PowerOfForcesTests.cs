using CsCheck;
using PushSim.Chassis;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Chassis;

/// <summary>Every force enters all six equations by its own velocity's arms: sum F.V = generalised force times speed.</summary>
public class PowerOfForcesTests
{
    private static readonly Gen<double[]> s_numbers = Gen.Double[-2.0, 2.0].Array[20];

    [Fact]
    public void Sum_of_force_times_point_velocity_is_generalised_power() =>
        s_numbers.Select(Gen.Int[1, 10]).Sample(
            (numbers, forces) =>
            {
                double[] n = numbers;
                var motion = new BodyMotion<R1> { U = n[0], V = n[1], ZDot = n[2], R = n[3], ThetaDot = n[4], PhiDot = n[5] };
                Wrench<R1> wrench = default;
                double power = 0.0;
                double magnitude = 0.0;
                for (int k = 0; k < forces; k++)
                {
                    double x = n[(k + 1) % 20], y = n[(k + 3) % 20], z = n[(k + 7) % 20];
                    double fx = 9.0 * n[(k + 11) % 20], fy = 9.0 * n[(k + 13) % 20], fz = 9.0 * n[(k + 17) % 20];
                    motion.PointVelocity(x, y, z, out R1 vx, out R1 vy, out R1 vz);
                    wrench.Add(x, y, z, fx, fy, fz);
                    power += (fx * vx.Value) + (fy * vy.Value) + (fz * vz.Value);

                    // every term of the products, before they cancel
                    magnitude += Math.Abs(fx) * (Math.Abs(n[0]) + Math.Abs(n[3] * y) + Math.Abs(z * n[4]));
                    magnitude += Math.Abs(fy) * (Math.Abs(n[1]) + Math.Abs(n[3] * x) + Math.Abs(z * n[5]));
                    magnitude += Math.Abs(fz) * (Math.Abs(n[2]) + Math.Abs(n[4] * x) + Math.Abs(n[5] * y));
                }

                double general = wrench.Power(motion).Value;
                Assert.True(Math.Abs(general - power) <= 1e-12 * magnitude, $"generalised {general:R} W, sum F.V {power:R} W");
            },
            seed: "0N0XIzNsQ0O2", iter: 2000);
}
