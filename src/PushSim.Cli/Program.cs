using PushSim.Cli;

using var interrupt = new CancellationTokenSource();
Console.OutputEncoding = System.Text.Encoding.UTF8;
Console.CancelKeyPress += (_, e) =>
{
    e.Cancel = true;
    interrupt.Cancel();
};
return CommandLineApp.Invoke(args, Console.Out, Console.Error, interrupt.Token);
