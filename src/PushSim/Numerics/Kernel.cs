using System.Runtime.CompilerServices;

namespace PushSim.Numerics;

/// <summary>How the methods of the kernels are compiled. Under the JIT of a plain build they are optimized at their first call: warming up costs more. A build that is compiled ahead leaves the
/// word out, since ReadyToRun passes over every method that has it.</summary>
internal static class Kernel
{
#if COMPILED_AHEAD
    /// <summary>Whether the kernels, lanes of 256 bits among them, are compiled before the program starts, so that lanes pay from the first match on.</summary>
    public const bool IsCompiledAhead = true;

    /// <summary>A method of its own, sized for the compiler.</summary>
    public const MethodImplOptions Part = MethodImplOptions.NoInlining;

    /// <summary>A method that may go into its caller.</summary>
    public const MethodImplOptions Whole = 0;
#else
    public const bool IsCompiledAhead = false;

    public const MethodImplOptions Part = MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization;

    public const MethodImplOptions Whole = MethodImplOptions.AggressiveOptimization;
#endif
}
