using System.Globalization;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Text;

/// <summary>What recorded shifts taught, in words.</summary>
internal static class LearntText
{
    /// <summary>An entry with its values and their ranges.</summary>
    public static string Of(PlotLearnt learnt)
    {
        var parts = new[]
        {
            learnt.Conductivity is { } share ? string.Create(CultureInfo.InvariantCulture, $"conductivity {share.Number:F0} % of the assumed one ({share.Low:F0} to {share.High:F0} %)") : null,
            learnt.Laying is { } laying ? string.Create(CultureInfo.InvariantCulture, $"{laying.Number:+0.0;-0.0;0.0} K behind the screed ({laying.Low:+0.0;-0.0;0.0} to {laying.High:+0.0;-0.0;0.0} K)") : null,
        };
        return $"entry {PlainText.Show(learnt.Entry)}: {string.Join(", ", parts.OfType<string>())}";
    }
}
