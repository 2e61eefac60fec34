using MathNet.Numerics.LinearAlgebra;

namespace PushSim.Analysis.Ladder;

/// <summary>Strengths out of matches between pairs, with stalemates: P(i beats j) : P(j beats i) : P(stalemate) = p_i : p_j : nu sqrt(p_i p_j). Davidson, J. Amer. Statist. Assoc. 65:317, 1970;
/// without stalemates Bradley and Terry, Biometrika 39:324, 1952. Greatest likelihood by Newton's method on log p and log nu, intervals from the information
/// matrix. If some robots never lose to the others the likelihood has no maximum (Ford 1957): then each pair between two groups of which one never loses to the other counts as if
/// one match in twenty had gone each way more. That share is fixed, so a score does not grow with the count of matches, and the end on that side stays open.
/// Where too few matches but stalemates link them, for example stalemates only, every pair gets it (<see cref="HasPrior"/>).</summary>
public sealed class Ranking
{
    /// <summary>Points of score for one natural unit of log strength: 400 points are odds of ten to one [1].</summary>
    public const double PointsPerUnit = 173.71779276130073;

    // Matches of a pair that count as won once more each way where its strengths would run away, as a share [1].
    private const double PriorShare = 1.0 / 20.0;

    // Normal quantile of a one-sided 95 % interval [1].
    private const double OneSided = 1.6448536269514722;

    // Draws of all strengths: a chance of one half is known to 1 of 100 [1].
    private const int RankDraws = 4000;
    private const int MostSteps = 200;
    private const double Converged = 1e-13;

    // Longest Newton step in log strength: beyond it the quadratic model is no guide [1].
    private const double LongestStep = 1.0;

    // Variance of a log strength or of log nu above which the matches do not tell it: it runs away, as far as the numbers go. Where there is a maximum a link of the
    // chain of pairs adds a few units, more only where all but a few of very many matches are stalemates [1].
    private const double RanAway = 1e4;

    private readonly bool[] _isOpenAbove;
    private readonly bool[] _isOpenBelow;

    private Ranking(double[] log, Matrix<double> covariance, double tie, bool hasPrior, bool[] isOpenAbove, bool[] isOpenBelow)
    {
        (_isOpenAbove, _isOpenBelow) = (isOpenAbove, isOpenBelow);
        LogStrengths = log;
        Covariance = covariance;
        StalemateFactor = tie;
        HasPrior = hasPrior;
    }

    /// <summary>ln p of each robot, mean 0 [1].</summary>
    public IReadOnlyList<double> LogStrengths { get; }

    /// <summary>nu of the model; 0 without stalemates [1].</summary>
    public double StalemateFactor { get; }

    /// <summary>True if a share of a pair's matches was added each way to make the strengths finite.</summary>
    public bool HasPrior { get; }

    /// <summary>Covariance of the log strengths under mean 0 [1].</summary>
    private Matrix<double> Covariance { get; }

    /// <summary>Fits the strengths.</summary>
    /// <param name="robots">Count of robots, at least 2 [1].</param>
    /// <param name="pairs">Matches; every robot must be linked to every other by some.</param>
    public static Ranking Fit(int robots, IReadOnlyList<PairRecord> pairs)
    {
        pairs = [.. pairs.Select(p => p.AsFreeDraws)];
        bool[,] reaches = Reaches(robots, pairs);
        bool IsOne(int i, int j) => reaches[i, j] && reaches[j, i];
        if (Enumerable.Range(0, robots).All(i => IsOne(0, i)))
        {
            bool[] closed = new bool[robots];
            return Greatest(robots, pairs, hasPrior: false, closed, closed) ?? Greatest(robots, [.. pairs.Select(Pulled)], hasPrior: true, closed, closed)!;
        }

        // nobody outside its group ever beat it, or nobody outside was ever beaten by it
        bool[] isAbove = [.. Enumerable.Range(0, robots).Select(i => !Enumerable.Range(0, robots).Any(j => reaches[j, i] && !reaches[i, j]))];
        bool[] isBelow = [.. Enumerable.Range(0, robots).Select(i => !Enumerable.Range(0, robots).Any(j => reaches[i, j] && !reaches[j, i]))];
        return Greatest(robots, [.. pairs.Select(p => IsOne(p.First, p.Second) ? p : Pulled(p))], hasPrior: true, isAbove, isBelow)!;
    }

    private static PairRecord Pulled(PairRecord p) => p with { Wins = p.Wins + (PriorShare * p.Matches), Losses = p.Losses + (PriorShare * p.Matches) };

    // The strengths of greatest likelihood; without the prior null where they run away.
    private static Ranking? Greatest(int robots, IReadOnlyList<PairRecord> pairs, bool hasPrior, bool[] isAbove, bool[] isBelow)
    {
        bool hasTies = pairs.Any(p => p.Stalemates > 0.0);
        double[] log = new double[robots];
        double tie = 0.0;
        Matrix<double> information = Matrix<double>.Build.Dense(1, 1);
        for (int step = 0; step < MostSteps; step++)
        {
            (Vector<double> gradient, information) = Derivatives(robots, pairs, log, tie, hasTies);
            Vector<double> change = information.Solve(gradient);
            double most = change.AbsoluteMaximum();
            double scale = Math.Min(1.0, LongestStep / Math.Max(most, 1e-300));
            for (int i = 0; i < robots; i++)
            {
                log[i] += scale * change[i];
            }

            tie += hasTies ? scale * change[robots] : 0.0;
            if (most < Converged)
            {
                break;
            }
        }

        double mean = log.Average();
        Matrix<double> covariance = information.Inverse();
        bool isTold = covariance.Diagonal().All(v => v >= 0.0 && v < RanAway);
        return isTold || hasPrior ? new Ranking([.. log.Select(l => l - mean)], Centred(covariance, robots), hasTies ? Math.Exp(tie) : 0.0, hasPrior, isAbove, isBelow) : null;
    }

    /// <summary>Score in points with its 95 % interval, mean of all robots 0 [1]. An end is infinite where no match bounds it; the other is then that of a one-sided interval.</summary>
    /// <param name="robot">Place of the robot in the list [1].</param>
    public (double Score, double Low, double High) Score(int robot)
    {
        double score = PointsPerUnit * LogStrengths[robot];
        (bool above, bool below) = (_isOpenAbove[robot], _isOpenBelow[robot]);
        double half = PointsPerUnit * (above != below ? OneSided : Chance.ShareInterval.Z) * Math.Sqrt(Covariance[robot, robot]);
        return (score, below ? double.NegativeInfinity : score - half, above ? double.PositiveInfinity : score + half);
    }

    /// <summary>Standard error of the difference of two log strengths [1].</summary>
    /// <param name="a">Place of the one [1].</param>
    /// <param name="b">Place of the other [1].</param>
    public double ErrorOfDifference(int a, int b) => Math.Sqrt(Covariance[a, a] + Covariance[b, b] - (2.0 * Covariance[a, b]));

    /// <summary>Chance of each robot to stand at each rank, where the log strengths lie as their covariance says: the first place is the robot, the second the rank from 0 [1].</summary>
    public double[][] RankChances()
    {
        int robots = LogStrengths.Count;
        MathNet.Numerics.LinearAlgebra.Factorization.Evd<double> parts = Covariance.Evd(Symmetricity.Symmetric);
        double[] deviation = [.. parts.EigenValues.Select(v => Math.Sqrt(Math.Max(0.0, v.Real)))];
        double[][] chances = [.. Enumerable.Range(0, robots).Select(_ => new double[robots])];
        double[] drawn = new double[robots];
        int[] order = new int[robots];
        for (int draw = 0; draw < RankDraws; draw++)
        {
            for (int i = 0; i < robots; i++)
            {
                (drawn[i], order[i]) = (-LogStrengths[i], i);
            }

            for (int k = 0; k < robots; k++)
            {
                double z = deviation[k] * NormalQuantile.Of(Philox.Uniform(0, draw, (ulong)k));
                for (int i = 0; i < robots; i++)
                {
                    drawn[i] -= z * parts.EigenVectors[i, k];
                }
            }

            Array.Sort(drawn, order);
            for (int rank = 0; rank < robots; rank++)
            {
                chances[order[rank]][rank] += 1.0 / RankDraws;
            }
        }

        return chances;
    }

    // Gradient and negative Hessian; the mean of the logs is held at 0 by a term that the likelihood does not feel.
    private static (Vector<double> Gradient, Matrix<double> Information) Derivatives(int robots, IReadOnlyList<PairRecord> pairs, double[] log, double tie, bool hasTies)
    {
        int size = robots + (hasTies ? 1 : 0);
        Vector<double> g = Vector<double>.Build.Dense(size);
        Matrix<double> h = Matrix<double>.Build.Dense(size, size);
        foreach (PairRecord p in pairs)
        {
            (int i, int j) = (p.First, p.Second);
            double d = log[i] - log[j];
            double a = Math.Exp(0.5 * d);
            double b = Math.Exp(-0.5 * d);
            double nu = hasTies ? Math.Exp(tie) : 0.0;
            double sum = a + b + nu;
            (double win, double lose, double draw, double n) = (a / sum, b / sum, nu / sum, p.Matches);

            // in half the difference of the logs
            double gd = 0.5 * (p.Wins - p.Losses - (n * (win - lose)));
            double hd = 0.25 * n * (win + lose - ((win - lose) * (win - lose)));
            g[i] += gd;
            g[j] -= gd;
            h[i, i] += hd;
            h[j, j] += hd;
            h[i, j] -= hd;
            h[j, i] -= hd;
            if (hasTies)
            {
                double cross = -0.5 * n * draw * (win - lose);
                g[robots] += p.Stalemates - (n * draw);
                h[robots, robots] += n * draw * (1.0 - draw);
                h[i, robots] += cross;
                h[robots, i] += cross;
                h[j, robots] -= cross;
                h[robots, j] -= cross;
            }
        }

        double mean = log.Average();
        for (int i = 0; i < robots; i++)
        {
            g[i] -= mean;
            for (int j = 0; j < robots; j++)
            {
                h[i, j] += 1.0 / robots;
            }
        }

        return (g, h);
    }

    private static Matrix<double> Centred(Matrix<double> covariance, int robots)
    {
        Matrix<double> centre = Matrix<double>.Build.Dense(robots, robots, (i, j) => (i == j ? 1.0 : 0.0) - (1.0 / robots));
        return centre * covariance.SubMatrix(0, robots, 0, robots) * centre;
    }

    // Who is linked to whom by a chain of wins; a stalemate counts as one each way. Where some pair is not linked both ways there is no maximum; where stalemates are among the links
    // there may be none all the same.
    private static bool[,] Reaches(int robots, IReadOnlyList<PairRecord> pairs)
    {
        bool[,] reaches = new bool[robots, robots];
        for (int i = 0; i < robots; i++)
        {
            reaches[i, i] = true;
        }

        foreach (PairRecord p in pairs)
        {
            reaches[p.First, p.Second] |= p.Wins + p.Stalemates > 0.0;
            reaches[p.Second, p.First] |= p.Losses + p.Stalemates > 0.0;
        }

        for (int k = 0; k < robots; k++)
        {
            for (int i = 0; i < robots; i++)
            {
                for (int j = 0; reaches[i, k] && j < robots; j++)
                {
                    reaches[i, j] |= reaches[k, j];
                }
            }
        }

        return reaches;
    }
}
