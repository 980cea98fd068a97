using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using Laygate.Engineering.Measured;
using Laygate.Engineering.Quantities;
using Laygate.Engineering.Records.Happened;
using Laygate.Exchange.Comparisons;
using Laygate.Exchange.Records;
using Laygate.Exchange.Reports;
using Laygate.Exchange.RuleLists;
using Laygate.Exchange.Sizing;
using Laygate.Model.Levers;
using Laygate.Model.Plans;
using Laygate.Rules.Definitions;
using Laygate.Rules.Results;

namespace Laygate.Exchange;

/// <summary>How reports, comparisons and rules become JSON, and reports come back from it: source that is made from the records when this room is built.</summary>
[JsonSourceGenerationOptions(
    PropertyNamingPolicy = JsonKnownNamingPolicy.SnakeCaseLower,
    GenerationMode = JsonSourceGenerationMode.Metadata,
    Converters =
    [
        typeof(NumberToken), typeof(YesNoToken), typeof(WholeToken), typeof(DayToken), typeof(MomentToken), typeof(SeverityToken), typeof(VerdictToken),
        typeof(WordToken<Basis>), typeof(WordToken<ChangeDirection>), typeof(WordToken<ChangeKind>), typeof(WordToken<CheckKind>), typeof(WordToken<ClauseStatus>),
        typeof(WordToken<DepartureState>), typeof(WordToken<ElementKind>), typeof(WordToken<Evidence>), typeof(WordToken<Layer>), typeof(WordToken<LeverKind>),
        typeof(WordToken<LifeState>), typeof(WordToken<Origin>), typeof(WordToken<Outcome>), typeof(WordToken<Place>), typeof(WordToken<RemedyObstacle>),
        typeof(WordToken<HeldOutcome>), typeof(WordToken<NotDecidedBecause>), typeof(WordToken<HoldPointState>), typeof(WordToken<TrialLikeness>), typeof(WordToken<NotCompared>), typeof(WordToken<SizedKind>), typeof(WordToken<Stage>), typeof(WordToken<Status>), typeof(WordToken<Strength>), typeof(WordToken<WeatherAxis>),
    ])]
[JsonSerializable(typeof(RunShape))]
[JsonSerializable(typeof(ComparisonShape))]
[JsonSerializable(typeof(RuleListShape))]
[JsonSerializable(typeof(SizingShape))]
[JsonSerializable(typeof(LedgerShape))]
[JsonSerializable(typeof(OnwardShape))]
[JsonSerializable(typeof(HeldShape))]
[JsonSerializable(typeof(TrialShape))]
[JsonSerializable(typeof(MeasuredShape))]
[JsonSerializable(typeof(FeedbackShape))]
public sealed partial class Shapes : JsonSerializerContext
{
    /// <summary>Writes a value, or null, in the middle of a document: it is passed on only when the writer's own block is full.</summary>
    public static void Write<T>(Utf8JsonWriter json, T? value, JsonTypeInfo<T> shape)
        where T : class => ((JsonConverter<T>)shape.Converter).Write(json, value!, shape.Options);
}
