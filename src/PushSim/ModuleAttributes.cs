// Locals of the kernels are vectors of matches: clearing them first costs as much as the arithmetic. Nothing reads a local before it is set.
[module: System.Runtime.CompilerServices.SkipLocalsInit]
