using System.Buffers.Binary;
using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Compare;

/// <summary>A recording beside the foretold chatter. The sounds are made up here; no real recording was at hand.</summary>
public class SoundCommandTests
{
    private const int Rate = 16000;

    // 16 bit, one channel: a tone in noise, or noise alone
    private static void Write(string file, double frequency, double seconds)
    {
        var random = new Random(3);
        byte[] bytes = new byte[44 + (2 * (int)(seconds * Rate))];
        "RIFF"u8.CopyTo(bytes);
        "WAVEfmt "u8.CopyTo(bytes.AsSpan(8));
        "data"u8.CopyTo(bytes.AsSpan(36));
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(4), bytes.Length - 8);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(16), 16);
        BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(20), 1);
        BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(22), 1);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(24), Rate);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(28), 2 * Rate);
        BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(32), 2);
        BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(34), 16);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(40), bytes.Length - 44);
        for (int i = 0; 44 + (2 * i) < bytes.Length; i++)
        {
            double v = (frequency > 0.0 ? 4000.0 * Math.Sin(2.0 * Math.PI * frequency * i / Rate) : 0.0) + (1500.0 * (random.NextDouble() - 0.5));
            BinaryPrimitives.WriteInt16LittleEndian(bytes.AsSpan(44 + (2 * i)), (short)v);
        }

        File.WriteAllBytes(file, bytes);
    }

    // spot-bouncy-tyre chatters at 193 Hz in the run
    [Theory]
    [InlineData(198.0, "agrees")]
    [InlineData(320.0, "differs")]
    [InlineData(0.0, "no buzz heard")]
    public void A_recording_is_set_beside_the_foretold_chatter(double frequency, string expected)
    {
        using var scratch = new ScratchFolder();
        Write(scratch["turn.wav"], frequency, 2.0);
        Cli cli = Cli.Run("compare", scratch["turn.wav"], Repository.Scenario("spot-bouncy-tyre"), "--json");
        Assert.Equal("", cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        Assert.Equal(expected, json.RootElement.GetProperty("sound").GetString());
        Assert.InRange(json.RootElement.GetProperty("chatter_hz").GetDouble(), 180.0, 205.0);
    }

    [Fact]
    public void What_is_too_short_says_what_it_takes()
    {
        using var scratch = new ScratchFolder();
        Write(scratch["turn.wav"], 200.0, 0.2);
        Cli cli = Cli.Run("compare", scratch["turn.wav"], Repository.Scenario("spot-bouncy-tyre"));
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("half a second at 4000 Hz or more", cli.Error, StringComparison.Ordinal);
    }
}
