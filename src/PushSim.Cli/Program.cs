using System.Runtime.InteropServices;
using PushSim.Cli;
using PushSim.Files;

using var interrupt = new CancellationTokenSource();
Console.OutputEncoding = System.Text.Encoding.UTF8;
TextReader? person = Console.IsInputRedirected || Console.IsOutputRedirected ? null : Console.In;
if (Console.IsOutputRedirected && !OperatingSystem.IsWindows())
{
    Console.SetOut(new StreamWriter(new StandardOutput(), new System.Text.UTF8Encoding(false)) { AutoFlush = true });
}

Console.SetError(new ForgivingWriter(Console.Error));
using PosixSignalRegistration interrupted = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using PosixSignalRegistration terminated = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
return CommandLineApp.Invoke(args, Console.Out, Console.Error, interrupt.Token, person);

void Stop(PosixSignalContext signal)
{
    if (interrupt.IsCancellationRequested)
    {
        // whoever asks twice does not want to wait
        StandardOutput.EndProcess(ExitCode.Interrupted);
    }

    signal.Cancel = true;
    interrupt.Cancel();
}
