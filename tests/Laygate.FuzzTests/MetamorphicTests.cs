using System.Globalization;
using Laygate.Engineering.Quantities;
using Laygate.FuzzTests.Metamorphic;
using Xunit.Abstractions;

namespace Laygate.FuzzTests;

/// <summary>
/// What must hold between a plan and the same plan changed: worse weather and fewer trucks make nothing better; units, order, ids and culture change nothing.
/// A usual run asks 20 random plans, the full run (<c>LAYGATE_FULL_RUN</c>) 300; LAYGATE_PLANS in the environment says another number.
/// </summary>
public sealed class MetamorphicTests(ITestOutputHelper output)
{
    private static int Count => Environment.GetEnvironmentVariable("LAYGATE_PLANS") is { Length: > 0 } asked ? int.Parse(asked, CultureInfo.InvariantCulture)
        : FullRun.IsAsked ? 300 : 20;

    [Fact]
    public void Worse_is_never_better_and_what_means_the_same_is_judged_the_same()
    {
        var properties = new Properties();
        Parallel.For(0, Count, new ParallelOptions { MaxDegreeOfParallelism = 2 }, properties.Ask);
        foreach (var (property, answers) in properties.Compared)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{property}: {answers} answers compared"));
        }

        foreach (var (exception, times) in properties.Excepted)
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"excepted: {exception}, {times} times"));
        }

        Assert.True(!properties.Broken.Any(), string.Join('\n', properties.Broken));
        foreach (var property in (string[])["units", "order", "ids", "culture", "weather", "windows", "trucks", "metres"])
        {
            Assert.True(properties.Compared.Any(one => one.Key == property && one.Value > 0), $"nothing was compared for {property}");
        }
    }

    [Fact]
    public void Every_exception_names_something_and_has_a_reason()
    {
        var catalogue = LaygateQuantities.Catalogue();
        var rules = Laygate.ConformanceTests.Repository.Book.General!.Rules.Select(rule => rule.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var property in Exceptions.Properties)
        {
            Assert.All(Exceptions.Of(property), exception => Assert.True(
                exception.Reason.Length > 20 && (exception.What.StartsWith("#/", StringComparison.Ordinal) || rules.Contains(exception.What) || catalogue.Find(exception.What) is not null), $"{property}: {exception}"));
        }
    }
}
