using System.Text;
using PushSim.Files;
using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Bench;

/// <summary>Makes lines of what a source says and hands them on with the time of their arrival: all that came together to whoever keeps them first, then to the session. One thread at a time.</summary>
/// <param name="session">What listens.</param>
/// <param name="start">Time of day of the bench's start, from which the news are counted [s].</param>
/// <param name="rate">Readings a second of lines without times [1/s]; null: they are timed as they come.</param>
/// <param name="keep">Keeps lines, before anything is made of them; null: nobody.</param>
public sealed class BenchFeed(BenchSession session, double start, double? rate, Action<IReadOnlyList<string>>? keep)
{
    // So many lines in less than this come from no board [1], [s].
    private const int ManyLines = 500;
    private const double NoTime = 0.25;

    private readonly List<(string Line, int Number, bool IsCut)> _lines = [];
    private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();
    private LineAssembler? _assembler;
    private double _arrival;
    private long _untimed;

    /// <summary>Since when the source is gone [s]; null: it is there, or never was.</summary>
    public double? GoneSince { get; private set; }

    /// <summary>Whether the lines have no time of their own and come faster than any cell reads.</summary>
    public bool IsTooFast => rate is null && _untimed >= ManyLines && !session.HasOwnTime && _arrival - start < NoTime;

    private LineAssembler Assembler => _assembler ??= new LineAssembler((line, number, isCut) => _lines.Add((line, number, isCut)));

    /// <summary>When a piece of news came, on the clock of the session [s].</summary>
    public double TimeOf(SourceNews news) => start + news.Arrival;

    /// <summary>Takes what a source says.</summary>
    public void Take(SourceNews news)
    {
        switch (news.Kind)
        {
            case SourceNewsKind.Bytes:
                _arrival = TimeOf(news);
                char[] text = new char[_decoder.GetCharCount(news.Bytes, flush: false)];
                _decoder.GetChars(news.Bytes, text, flush: false);
                Assembler.Push(text);
                Work();
                break;
            case SourceNewsKind.Plugged when GoneSince is double since:
                GoneSince = null;
                session.Gap(since, TimeOf(news));
                break;
            case SourceNewsKind.Unplugged:
                GoneSince = TimeOf(news);

                // half a line that was cut off is a line
                Assembler.Finish();
                Work();
                break;
            default:
                break;
        }
    }

    /// <summary>Nothing more comes: what is under way ends.</summary>
    public void Finish()
    {
        Assembler.Finish();
        Work();
        session.Finish();
    }

    private void Work()
    {
        if (_lines.Count == 0)
        {
            return;
        }

        for (int i = 0; i < _lines.Count; i++)
        {
            (string line, int number, bool isCut) = _lines[i];
            string stamped = BenchSession.Stamped(line, Arrival(number));
            _untimed += ReferenceEquals(stamped, line) ? 0 : 1;
            _lines[i] = (stamped, number, isCut);
        }

        keep?.Invoke([.. _lines.Select(l => l.Line)]);
        foreach ((string stamped, int number, bool isCut) in _lines)
        {
            session.Take(stamped, number, Arrival(number), isCut);
        }

        _lines.Clear();
    }

    private double Arrival(int number) => rate is double each ? start + (number / each) : _arrival;
}
