using System.Collections.Concurrent;
using System.Reflection;
using Laygate.Checking;
using Laygate.Checking.Cases;
using Laygate.Checking.Records;
using Laygate.Model.Plans;
using Laygate.Reading;
using Laygate.Reading.Departures;
using Laygate.Reading.Parts;
using Laygate.Reading.RuleFiles;
using Laygate.Rules.Definitions;
using Laygate.Rules.Merging;
using Laygate.Rules.Results;
using Laygate.Service.Settings;
using Microsoft.Extensions.Options;

namespace Laygate.Service.Checking;

/// <summary>How a plan is to be checked.</summary>
/// <param name="Rules">Names of shipped specifications; null: those of the service.</param>
/// <param name="Stage">Stage at which at least to judge.</param>
/// <param name="Date">Date of checking; null: today, UTC.</param>
/// <param name="Quick">Whether spread and simulated shifts are left out; the report says so.</param>
internal sealed record CheckWish(IReadOnlyList<string>? Rules = null, Stage? Stage = null, DateOnly? Date = null, bool Quick = false)
{
    /// <summary>Whether to look for what would mend findings; left out when quick.</summary>
    public bool Remedies { get; init; }

    /// <summary>Whether to judge laying hour by hour; left out when quick.</summary>
    public bool Outlook { get; init; }

    /// <summary>The files that came with the plan; none when left out.</summary>
    public IPartFiles Parts { get; init; } = new NoPartFiles();

    /// <summary>Whether plots and inputs are worked out, for a page.</summary>
    public bool Page { get; init; }
}

/// <summary>Opens rule books and checks plans. A book is opened once for each set of specifications.</summary>
internal sealed class CheckDesk
{
    private readonly ServiceSettings settings;
    private readonly TimeProvider clock;
    private readonly ConcurrentDictionary<string, Lazy<RuleBook>> books = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Lazy<IReadOnlyList<CaseSummary>>> cases = new(StringComparer.Ordinal);
    private readonly IReadOnlyList<Departure> departures;
    private readonly PlanTools tools = new();

    /// <summary>Opens the rule book of the service.</summary>
    /// <exception cref="InvalidDataException">The rule book or the departures cannot be read.</exception>
    public CheckDesk(IOptions<ServiceSettings> options, TimeProvider clock)
    {
        settings = options.Value;
        this.clock = clock;
        Pack = RulePack.Read(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, RulePack.FileName)));
        Book = Bound(settings.Rules);
        var read = DepartureFiles.Load(settings.Departures, Book, new DiskFiles());
        departures = read.Problems.Count == 0 ? read.Departures : throw Unusable(read.Problems);
    }

    /// <summary>Version of the program.</summary>
    public static string Version { get; } =
        typeof(CheckDesk).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "0";

    /// <summary>What ships with the program.</summary>
    public RulePack Pack { get; }

    /// <summary>The rule book under which submissions are screened.</summary>
    public RuleBook Book { get; }

    /// <summary>The cases of a shipped rule; they are read once for each rule.</summary>
    /// <param name="id">Id of a rule of the book.</param>
    public IReadOnlyList<CaseSummary> Cases(string id) => cases.GetOrAdd(id, known => new Lazy<IReadOnlyList<CaseSummary>>(() =>
        new DiskFiles().Folder(Path.Combine(AppContext.BaseDirectory, "rules")) is { } text ? RuleTests.Cases(text, known) : [])).Value;

    /// <summary>The book with the named specifications over general practice; the service's own when none is named.</summary>
    /// <exception cref="BadHttpRequestException">A name is no shipped specification.</exception>
    public RuleBook BookOf(IReadOnlyList<string>? rules)
    {
        if (rules is not { Count: > 0 })
        {
            return Book;
        }

        // A name from a request is looked up, never opened.
        if (rules.FirstOrDefault(name => Pack.Find(name) is null) is { } unknown)
        {
            var shown = unknown.Length > 60 ? unknown[..60] : unknown;
            throw new BadHttpRequestException($"There is no shipped specification `{shown}`. Shipped are: {string.Join(", ", Pack.Specifications.Where(one => !one.IsUnread).Select(one => one.Name))}.");
        }

        var names = rules.Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ToList();
        return names.Count <= 3
            ? books.GetOrAdd(string.Join('\n', names), _ => new Lazy<RuleBook>(() => Bound(names))).Value
            : throw new BadHttpRequestException("Name at most three specifications.");
    }

    /// <summary>A check under these wishes.</summary>
    public PlanCheck Open(CheckWish wish)
    {
        var own = wish.Rules is not { Count: > 0 };
        return new PlanCheck(
            BookOf(wish.Rules),
            new CheckSettings(wish.Stage, wish.Date ?? DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime), Version)
            {
                Quick = wish.Quick,
                Remedies = wish.Remedies,
                Outlook = wish.Outlook,
                Page = wish.Page,
                Parts = wish.Parts,
            },
            own ? departures : [],
            tools);
    }

    /// <summary>A plan with the record of its shift.</summary>
    /// <param name="file">Name of the plan.</param>
    /// <param name="text">Its bytes.</param>
    /// <param name="parts">The files that came with it.</param>
    /// <param name="record">The folder of the record.</param>
    public (RecordedShift? Shift, IReadOnlyList<Problem> Problems) Recorded(string file, byte[] text, IPartFiles parts, IRuleFolder record) => RecordedShift.Open(tools, file, text, parts, record);

    /// <summary>What became of the limits of a plan, by the rules and departures of the service.</summary>
    /// <param name="shift">The shift.</param>
    public HeldReport Held(RecordedShift shift) => shift.Held(Book, departures, DateOnly.FromDateTime(clock.GetUtcNow().UtcDateTime), simpleBy: null, Version);

    private RuleBook Bound(IReadOnlyList<string> names)
    {
        var bound = RuleBooks.Load(Pack, names, new DiskFiles());
        return bound.Book ?? throw Unusable(bound.Problems);
    }

    private static InvalidDataException Unusable(IReadOnlyList<Problem> problems) => new(
        string.Join('\n', problems.Select(problem => $"{problem.File}{(problem.Position is { } at ? FormattableString.Invariant($":{at.Line}:{at.Column}") : string.Empty)}: {problem.Message} {problem.Hint}")));

    private sealed class DiskFiles : IRuleFiles
    {
        public IRuleFolder? Folder(string path) => Directory.Exists(path) ? new DiskFolder(path) : null;

        byte[]? IRuleFiles.File(string path) => File.Exists(path) ? File.ReadAllBytes(path) : null;
    }

    private sealed class DiskFolder(string path) : IRuleFolder
    {
        public string Name => path;

        public IReadOnlyList<string> Files =>
            [.. Directory.EnumerateFiles(path, "*", SearchOption.AllDirectories).Select(file => Path.GetRelativePath(path, file).Replace('\\', '/'))];

        public byte[] Read(string file) => File.ReadAllBytes(Path.Combine(path, file));
    }
}
