using System.Text.Json.Serialization;

namespace PushSim.Workbench.Wire;

/// <summary>All that goes over the wire; made at compile time, so that nothing is looked up when it runs.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower, NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals, GenerationMode = JsonSourceGenerationMode.Default)]
[JsonSerializable(typeof(StateMessage))]
[JsonSerializable(typeof(AnswerMessage))]
[JsonSerializable(typeof(ProblemMessage))]
[JsonSerializable(typeof(LogMessage))]
[JsonSerializable(typeof(UseRequest))]
[JsonSerializable(typeof(StripMessage))]
[JsonSerializable(typeof(OddsMessage))]
[JsonSerializable(typeof(CloserMessage))]
[JsonSerializable(typeof(OutsideMessage))]
[JsonSerializable(typeof(ChangeRequest))]
[JsonSerializable(typeof(OpenRequest))]
[JsonSerializable(typeof(ModeRequest))]
[JsonSerializable(typeof(StripsRequest))]
[JsonSerializable(typeof(SaveRequest))]
[JsonSerializable(typeof(NumberReply))]
[JsonSerializable(typeof(SavedReply))]
[JsonSerializable(typeof(PageReply))]
[JsonSerializable(typeof(TextReply))]
[JsonSerializable(typeof(FaultReply))]
[JsonSerializable(typeof(ConflictReply))]
[JsonSerializable(typeof(HomeReply))]
[JsonSerializable(typeof(NewRequest))]
internal sealed partial class WireContext : JsonSerializerContext;
