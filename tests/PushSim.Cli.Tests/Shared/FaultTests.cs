using System.Diagnostics;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>Disks that fail or processes that die at any write; output that nobody takes.</summary>
public class FaultTests(ITestOutputHelper output)
{
    // Every create, write, rename and removal in turn, with a disk that is full from there on, and with a process that ends there
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_write_that_fails_leaves_no_half_file_and_the_next_run_mends_it(bool isKilled)
    {
        using var scratch = new ScratchFolder();
        Dictionary<string, byte[]> first = Content(1);
        Dictionary<string, byte[]> second = Content(2);
        int faults = 0;
        foreach (bool hasOld in new[] { false, true })
        {
            for (int n = 1; ; n++)
            {
                string folder = scratch[$"{hasOld} {n}"];
                if (hasOld)
                {
                    WriteAll(folder, first);
                }

                bool failed = false;
                Disk.Use(new FailingDisk(n, isKilled));
                try
                {
                    WriteAll(folder, second);
                }
                catch (IOException)
                {
                    failed = true;
                }
                finally
                {
                    Disk.Use(null);
                }

                foreach (string file in Directory.GetFiles(folder).Where(f => !f.EndsWith(".part", StringComparison.Ordinal) && Path.GetFileName(f) != OutputFolder.MarkName))
                {
                    byte[] found = File.ReadAllBytes(file);
                    string name = Path.GetFileName(file);
                    Assert.True(found.SequenceEqual(second[name]) || (hasOld && found.SequenceEqual(first[name])), $"fault {n}: {name} is half there");
                }

                WriteAll(folder, second);
                Assert.Equal([OutputFolder.MarkName, .. second.Keys.Order(StringComparer.Ordinal)], Directory.GetFiles(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal));
                if (!failed)
                {
                    break;
                }

                faults++;
            }
        }

        output.WriteLine($"{faults} faults");
        Assert.True(faults > 60);
    }

    [Fact]
    public void A_run_on_a_disk_that_fills_up_says_so_and_ends_with_4()
    {
        using var scratch = new ScratchFolder();
        int n = 1;
        for (; ; n = (2 * n) + 1)
        {
            Disk.Use(new FailingDisk(n, isKilled: false));
            Cli run;
            try
            {
                run = Cli.Run("run", Repository.Scenario("launch-soft"), "--quiet", "--no-plots", "--out", scratch["out"]);
            }
            finally
            {
                Disk.Use(null);
            }

            if (run.Code == ExitCode.Done)
            {
                break;
            }

            Assert.Equal(ExitCode.CannotReadOrWrite, run.Code);
            Assert.Equal("pushsim: error: no space left\n", run.Error.ReplaceLineEndings("\n"));
            Assert.DoesNotContain(Directory.GetFiles(scratch["out"]), f => f.EndsWith(".part", StringComparison.Ordinal));
        }

        Assert.True(n > 15);
    }

    [Fact]
    public void A_folder_that_takes_nothing_is_exit_4()
    {
        Assert.SkipUnless(OperatingSystem.IsLinux(), "needs /proc");
        Cli run = Cli.Run("run", Repository.Scenario("launch-soft"), "--quiet", "--out", "/proc/pushsim-out");
        Assert.Equal(ExitCode.CannotReadOrWrite, run.Code);
        Assert.StartsWith("pushsim: error: ", run.Error);
    }

    [Theory]
    [InlineData("> /dev/full", ExitCode.CannotReadOrWrite)]
    [InlineData("| true; exit ${PIPESTATUS[0]}", ExitCode.Done)]
    public async Task Output_that_nobody_takes_ends_without_a_trace(string where, int code)
    {
        Assert.SkipUnless(File.Exists("/bin/bash") && File.Exists("/dev/full"), "needs bash and /dev/full");
        string program = typeof(CommandLineApp).Assembly.Location;
        foreach (string command in new[] { "explain body_stiffness", "check \"$1\"", "run \"$1\" --json", "--help" })
        {
            var start = new ProcessStartInfo("/bin/bash", ["-c", $"dotnet \"$0\" {command} {where}", program, Repository.Scenario("launch-soft")]) { RedirectStandardError = true };
            using Process process = Process.Start(start)!;
            string error = await process.StandardError.ReadToEndAsync();
            await process.WaitForExitAsync();
            Assert.True(process.ExitCode == code, $"{command}: {process.ExitCode} {error}");
            Assert.DoesNotContain("   at ", error);
            Assert.True(error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length <= 1, error);
        }
    }

    private static Dictionary<string, byte[]> Content(byte of) => new()
    {
        ["history.csv"] = [.. Enumerable.Repeat(of, 3000)],
        ["plot.svg"] = [.. Enumerable.Repeat((byte)(10 + of), 5000)],
        ["plot.png"] = [.. Enumerable.Repeat((byte)(20 + of), 1000)],
    };

    private static void WriteAll(string path, Dictionary<string, byte[]> files)
    {
        OutputFolder folder = OutputFolder.Open(path, force: false);
        foreach ((string name, byte[] bytes) in files)
        {
            folder.Write(name, stream =>
            {
                foreach (byte[] piece in bytes.Chunk(1000))
                {
                    stream.Write(piece);
                }
            });
        }
    }

    // From the n-th operation on nothing is taken; where the process has died, nothing is removed either.
    private sealed class FailingDisk(int n, bool isKilled) : Disk
    {
        private int _done;

        public override Stream Create(string path)
        {
            Count();
            return new FailingStream(base.Create(path), this);
        }

        public override void Move(string from, string to)
        {
            Count();
            base.Move(from, to);
        }

        public override void Delete(string path)
        {
            if (isKilled)
            {
                Count();
            }

            base.Delete(path);
        }

        private void Count()
        {
            if (++_done >= n)
            {
                throw new IOException("no space left");
            }
        }

        private sealed class FailingStream(Stream inner, FailingDisk disk) : Stream
        {
            public override bool CanRead => false;

            public override bool CanSeek => false;

            public override bool CanWrite => true;

            public override long Length => inner.Length;

            public override long Position { get => inner.Position; set => throw new NotSupportedException(); }

            public override void Flush() => inner.Flush();

            public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();

            public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();

            public override void SetLength(long value) => throw new NotSupportedException();

            // half of it arrives
            public override void Write(byte[] buffer, int offset, int count)
            {
                inner.Write(buffer, offset, count / 2);
                disk.Count();
                inner.Write(buffer, offset + (count / 2), count - (count / 2));
            }

            protected override void Dispose(bool disposing)
            {
                inner.Dispose();
                base.Dispose(disposing);
            }
        }
    }
}
