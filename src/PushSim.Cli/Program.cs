using System.Runtime.InteropServices;
using PushSim.Cli;

using var interrupt = new CancellationTokenSource();
Console.OutputEncoding = System.Text.Encoding.UTF8;
using PosixSignalRegistration interrupted = PosixSignalRegistration.Create(PosixSignal.SIGINT, Stop);
using PosixSignalRegistration terminated = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Stop);
TextReader? person = Console.IsInputRedirected || Console.IsOutputRedirected ? null : Console.In;
return CommandLineApp.Invoke(args, Console.Out, Console.Error, interrupt.Token, person);

void Stop(PosixSignalContext signal)
{
    signal.Cancel = true;
    interrupt.Cancel();
}
