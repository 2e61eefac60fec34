namespace PushSim.Runs;

/// <summary>A part of a closer look has used up its <see cref="WorkBudget"/>; it never leaves the engine.</summary>
internal sealed class OutOfWorkException : Exception;
