namespace PushSim.Scenarios.Logs;

/// <summary>Makes lines out of characters as they come. A line ends in LF, CR LF or CR; one that does not end is cut, so that memory stays bounded whatever comes.</summary>
/// <param name="take">Given each line that is not empty, its number from 1, and whether it was cut.</param>
public sealed class LineAssembler(Action<string, int, bool> take)
{
    /// <summary>Characters of a line that are kept [1].</summary>
    public const int Longest = 4000;

    private readonly char[] _line = new char[Longest];
    private int _length;
    private int _number = 1;
    private bool _isCut;
    private bool _wasReturn;

    /// <summary>Takes characters.</summary>
    /// <param name="characters">They may end anywhere in a line.</param>
    public void Push(ReadOnlySpan<char> characters)
    {
        while (characters.Length > 0)
        {
            int end = characters.IndexOfAny('\r', '\n');
            ReadOnlySpan<char> part = end < 0 ? characters : characters[..end];
            if (part.Length > 0)
            {
                _wasReturn = false;
                int kept = Math.Min(part.Length, Longest - _length);
                part[..kept].CopyTo(_line.AsSpan(_length));
                _length += kept;
                _isCut |= kept < part.Length;
            }

            if (end < 0)
            {
                return;
            }

            // of CR LF the second ends nothing
            if (!(characters[end] == '\n' && _wasReturn))
            {
                End();
            }

            _wasReturn = characters[end] == '\r';
            characters = characters[(end + 1)..];
        }
    }

    /// <summary>Ends the last line, if it has not ended.</summary>
    public void Finish()
    {
        if (_length > 0)
        {
            End();
        }
    }

    private void End()
    {
        int number = _number++;
        string line = _length == 0 ? "" : new string(_line, 0, _length);
        bool isCut = _isCut;
        (_length, _isCut) = (0, false);
        if (line.Length > 0)
        {
            take(line, number, isCut);
        }
    }
}
