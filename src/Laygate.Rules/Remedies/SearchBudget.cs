using System.Collections.Concurrent;

namespace Laygate.Rules.Remedies;

/// <summary>
/// How many changed plans one search for remedies may judge. Each is read anew, which costs the more the more findings the plan
/// has; without a bound the cost would grow with the square of the plan. Counted in plans and not in time, so that the same
/// plan always gets the same remedies.
/// </summary>
internal sealed class SearchBudget
{
    private const int FewestPlans = 32;
    private const int Waves = 32;
    private const int PartOfOneSearch = 4;

    private SearchBudget(int plans) => Plans = plans;

    /// <summary>Changed plans that may be judged by expected values; harm and confirmation have half as many each.</summary>
    public int Plans { get; }

    /// <summary>Changed plans for one lever, and for the pairs of one finding.</summary>
    public int ForOne => Plans / PartOfOneSearch;

    /// <summary>The budget of a plan.</summary>
    /// <param name="most">Findings of changed plans that may be judged.</param>
    /// <param name="findings">Its number of findings.</param>
    public static SearchBudget Of(int most, int findings) => new(Math.Max(FewestPlans, most / Math.Max(1, findings)));

    /// <summary>
    /// Works through items in parallel, wave by wave; no new wave begins once so many plans are judged. What one wave judges does
    /// not depend on threads, so neither does where it ends.
    /// </summary>
    /// <param name="count">Number of items.</param>
    /// <param name="most">Plans from which on no wave begins.</param>
    /// <param name="judged">Plans judged so far.</param>
    /// <param name="options">Threads and cancellation.</param>
    /// <param name="work">Work on one item.</param>
    /// <returns>Number of items that were worked on.</returns>
    public int InWaves(int count, int most, Func<int> judged, ParallelOptions options, Action<int> work)
    {
        var wave = Math.Max(2, Plans / Waves);
        var done = 0;
        while (done < count && judged() < most)
        {
            var next = Math.Min(count, done + wave);
            Each(done, next, options, work);
            done = next;
        }

        return done;
    }

    /// <summary>Works on items in parallel, one at a time to each thread: an item costs from nothing to hundreds of simulated shifts.</summary>
    public static void Each(int from, int to, ParallelOptions options, Action<int> work) =>
        Parallel.ForEach(Partitioner.Create(Enumerable.Range(from, to - from), EnumerablePartitionerOptions.NoBuffering), options, work);
}
