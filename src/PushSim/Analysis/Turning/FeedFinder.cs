using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using PushSim.Runs;

namespace PushSim.Analysis.Turning;

/// <summary>Finds what feeds the fastest growing mode of a steady turn: the same mode is followed while one cause, the other or both are faded out.</summary>
internal static class FeedFinder
{
    // Steps of fading, in each of which the mode moves little [1].
    private const int Steps = 20;

    /// <summary>The feed of the mode that is chatter, else of the fastest growing one; null if none grows.</summary>
    public static TurnFeed? Of(SteadyTurn turn)
    {
        TurnMode mode = turn.Chatter ?? turn.Modes[0];
        if (mode.Growth <= 0.0)
        {
            return null;
        }

        Matrix<double> whole = turn.Model.Jacobian(turn.State);
        double Without(bool fall, bool load) => Followed(whole, turn.Model.Jacobian(turn.State, fall, load), new Complex(mode.Growth, 2.0 * Math.PI * mode.Frequency));
        return new TurnFeed(Without(true, false), Without(false, true), Without(true, true));
    }

    private static double Followed(Matrix<double> from, Matrix<double> to, Complex value)
    {
        Matrix<double> change = (to - from) / Steps;
        for (int k = 1; k <= Steps; k++)
        {
            Complex last = value;
            value = (from + (k * change)).Evd().EigenValues.MinBy(e => (e - last).Magnitude);
        }

        return value.Real;
    }
}
