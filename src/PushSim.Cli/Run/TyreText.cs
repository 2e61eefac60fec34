using PushSim.Analysis.Wear;
using PushSim.Words.Wear;

namespace PushSim.Cli.Run;

/// <summary>The tyres' part of a report, for screen and page.</summary>
internal static class TyreText
{
    public static IEnumerable<AnswerTable> Tables(TyreAnswers answers)
    {
        if (answers.Wear is WearResult wear)
        {
            yield return TyreTables.Of(wear);
        }

        if (answers.IsGripCut)
        {
            yield return new AnswerTable("After run").AddRemark("grip over the runs is left out, which would take too much work: --closer takes the time");
        }

        if (answers.Grip is GripSeries grip)
        {
            yield return TyreTables.Of(grip);
        }

        if (answers.Ranking.Count > 0)
        {
            AnswerTable ranking = TyreTables.Of(answers.Ranking);
            yield return answers.Wear is null ? ranking.AddRemark(WearWords.Limits, isAside: true) : ranking;
            if (TyreTables.GripOf(answers.Ranking) is AnswerTable life)
            {
                yield return life;
            }
        }
    }
}
