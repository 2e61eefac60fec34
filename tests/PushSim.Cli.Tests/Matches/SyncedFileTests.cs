using PushSim.Cli.Matches;
using Xunit;

namespace PushSim.Cli.Tests.Matches;

public class SyncedFileTests
{
    [Fact]
    public void Rows_reach_the_disk_at_intervals_and_at_the_end()
    {
        double now = 100.0;
        List<(double Time, long Length)> synced = [];
        using var file = new MemoryStream();
        using (var journal = new SyncedFile(file, () => synced.Add((now, file.Length)), () => now))
        {
            for (int row = 1; row <= 13; row++)
            {
                now += 1.0;
                journal.Write([1], 0, 1);

                // the system has each row at once
                Assert.Equal(row, file.Length);
            }
        }

        Assert.Equal([(106.0, 6L), (112.0, 12L), (113.0, 13L)], synced);
    }
}
