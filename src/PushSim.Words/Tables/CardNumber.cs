namespace PushSim.Words.Tables;

/// <summary>One of the few numbers of an answer card.</summary>
/// <param name="Label">What it is, in two to four words.</param>
/// <param name="Value">The number with its unit, as it is read.</param>
/// <param name="Beside">The same in the unit that builders use too, or what it is part of; may be empty.</param>
/// <param name="Note">Since when, up to where, how sure; may be empty.</param>
public sealed record CardNumber(string Label, string Value, string Beside = "", string Note = "");
