using Laygate.Reading.Parts;
using Laygate.Reading.Sets;
using Laygate.Register;
using Laygate.Rules.Results;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.Net.Http.Headers;

namespace Laygate.Service.Api;

/// <summary>The files that were sent are no set that can be used; nothing of them is kept.</summary>
/// <param name="problems">All reasons.</param>
internal sealed class UnusableSetException(IReadOnlyList<Problem> problems) : Exception("The set of files cannot be used.")
{
    /// <summary>All reasons.</summary>
    public IReadOnlyList<Problem> Problems { get; } = problems;
}

/// <summary>A plan as it was sent, with the files that came with it.</summary>
/// <param name="Name">Name of its file, in the set where there is one.</param>
/// <param name="Text">Its bytes.</param>
internal sealed record Sent(string Name, byte[] Text)
{
    /// <summary>The files that came with it, in their order.</summary>
    public IReadOnlyList<SetFile> Files { get; private init; } = [];

    /// <summary>The archive in which they came; null when they came by themselves.</summary>
    public SetFile? Archive { get; private init; }

    /// <summary>What the plan can use.</summary>
    public IPartFiles Parts { get; private init; } = new NoPartFiles();

    /// <summary>The same for the register.</summary>
    /// <param name="revisionOf">Id of the submission that it revises; null for a new one.</param>
    /// <param name="idempotencyKey">The caller's word for this one request; null when none was given.</param>
    public NewSubmission Submission(string? revisionOf, string? idempotencyKey) => new(Name, Text, revisionOf, idempotencyKey)
    {
        Files = [.. Files.Select(Handed)],
        Archive = Archive is null ? null : Handed(Archive),
    };

    /// <summary>What was sent as one file: a plan, or an archive.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="bytes">Its bytes.</param>
    /// <param name="plan">Which file of an archive is the plan; null: the only one that is a plan.</param>
    /// <exception cref="UnusableSetException">The archive cannot be used.</exception>
    /// <exception cref="BadHttpRequestException">The plan is too large.</exception>
    public static Sent One(string name, byte[] bytes, string? plan)
    {
        if (!SetArchive.IsOne(bytes))
        {
            return bytes.Length <= Bodies.LargestPlan ? new Sent(name, bytes) : throw new BadHttpRequestException("Too large.", StatusCodes.Status413PayloadTooLarge);
        }

        var (files, problems) = SetArchive.Unpack(name, bytes);
        return problems.Count > 0 ? throw new UnusableSetException(problems) : Of(name, files, plan) with { Archive = new SetFile(name, bytes) };
    }

    /// <summary>What was sent as several files.</summary>
    /// <param name="set">The set, as it is shown.</param>
    /// <param name="files">The files.</param>
    /// <param name="plan">Which of them is the plan; null: the only one that is a plan.</param>
    /// <exception cref="UnusableSetException">They are no set that can be used.</exception>
    public static Sent Of(string set, IReadOnlyList<SetFile> files, string? plan)
    {
        var (made, problems) = PlanSet.Of(set, files, plan);
        return made is null ? throw new UnusableSetException(problems) : new Sent(made.Plan.Name, made.Plan.Bytes) { Files = made.Others, Parts = made };
    }

    /// <summary>The body of a request: a plan, an archive, or a form with files.</summary>
    /// <param name="request">The request.</param>
    /// <param name="name">Name of the plan or archive; null where the caller gives none.</param>
    /// <param name="plan">Which file of a set is the plan; null: the only one that is a plan.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="UnusableSetException">The files are no set that can be used.</exception>
    /// <exception cref="BadHttpRequestException">There is no body, it is too large, or it is packed or of another kind.</exception>
    public static async Task<Sent> ReadAsync(HttpRequest request, string? name, string? plan, CancellationToken cancel)
    {
        var type = MediaTypeHeaderValue.TryParse(request.ContentType, out var media) ? media.MediaType.Value : null;
        if (string.Equals(type, Bodies.Form, StringComparison.OrdinalIgnoreCase))
        {
            return await FormAsync(request, plan, cancel);
        }

        if (Bodies.ArchiveTypes.Contains(type, StringComparer.OrdinalIgnoreCase))
        {
            Bodies.Unpacked(request);
            var bytes = await Bodies.ReadAsync(request.Body, SetLimits.Bytes, cancel);
            return SetArchive.IsOne(bytes) ? One(name ?? "set.zip", bytes, plan)
                : throw new UnusableSetException([new Problem(name ?? "set.zip", "This is no ZIP archive.", "Pack the files as ZIP, or send the plan as application/yaml.", null)]);
        }

        var text = await Bodies.PlanAsync(request, cancel);
        return SetArchive.IsOne(text)
            ? throw new BadHttpRequestException("This is a ZIP archive. Send it as application/zip.", StatusCodes.Status415UnsupportedMediaType)
            : new Sent(name ?? "plan.yaml", text);
    }

    /// <summary>The files of a form, each under its name.</summary>
    /// <param name="files">The files.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="BadHttpRequestException">They are too large together.</exception>
    public static async Task<IReadOnlyList<SetFile>> FilesAsync(IReadOnlyList<IFormFile> files, CancellationToken cancel)
    {
        if (files.Sum(file => file.Length) > SetLimits.Bytes)
        {
            throw new BadHttpRequestException("Too large.", StatusCodes.Status413PayloadTooLarge);
        }

        var read = new List<SetFile>();
        foreach (var file in files)
        {
            await using var stream = file.OpenReadStream();
            read.Add(new SetFile(file.FileName, await Bodies.ReadAsync(stream, SetLimits.Bytes, cancel, mayBeEmpty: true)));
        }

        return read;
    }

    /// <summary>The files of a body that is an archive or a form with files, of which none has to be a plan.</summary>
    /// <param name="request">The request.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="UnusableSetException">The archive cannot be used.</exception>
    /// <exception cref="BadHttpRequestException">There is no body, it is too large, or it is of another kind.</exception>
    public static async Task<IReadOnlyList<SetFile>> SetAsync(HttpRequest request, CancellationToken cancel)
    {
        var type = MediaTypeHeaderValue.TryParse(request.ContentType, out var media) ? media.MediaType.Value : null;
        if (string.Equals(type, Bodies.Form, StringComparison.OrdinalIgnoreCase))
        {
            Bodies.Unpacked(request);
            var form = await request.ReadFormAsync(new FormOptions { MemoryBufferThreshold = ServiceHost.LargestForm, MultipartBodyLengthLimit = ServiceHost.LargestForm, ValueCountLimit = SetLimits.Files }, cancel);
            return form.Count > 0 ? throw new BadHttpRequestException("Send each file as a part with a file name (`filename`); nothing else belongs in the form.") : Unpacked(await FilesAsync([.. form.Files], cancel));
        }

        if (!Bodies.ArchiveTypes.Contains(type, StringComparer.OrdinalIgnoreCase))
        {
            throw new BadHttpRequestException($"Send the record as {Bodies.ArchiveTypes[0]} or {Bodies.Form}.", StatusCodes.Status415UnsupportedMediaType);
        }

        Bodies.Unpacked(request);
        return Unpacked([new SetFile("record.zip", await Bodies.ReadAsync(request.Body, SetLimits.Bytes, cancel))]);
    }

    /// <summary>The files of an archive, where one archive was sent; else the files as they are.</summary>
    /// <exception cref="UnusableSetException">The archive cannot be used.</exception>
    public static IReadOnlyList<SetFile> Unpacked(IReadOnlyList<SetFile> files)
    {
        if (files is not [var only] || !SetArchive.IsOne(only.Bytes))
        {
            return files;
        }

        var (unpacked, problems) = SetArchive.Unpack(only.Name, only.Bytes);
        return problems.Count > 0 ? throw new UnusableSetException(problems) : unpacked;
    }

    // The part named `plan` is the plan; all stay in memory, whatever their size.
    private static async Task<Sent> FormAsync(HttpRequest request, string? plan, CancellationToken cancel)
    {
        Bodies.Unpacked(request);
        var form = await request.ReadFormAsync(new FormOptions { MemoryBufferThreshold = ServiceHost.LargestForm, MultipartBodyLengthLimit = ServiceHost.LargestForm, ValueCountLimit = SetLimits.Files }, cancel);
        if (form.Count > 0)
        {
            throw new BadHttpRequestException("Send each file as a part with a file name (`filename`); nothing else belongs in the form.");
        }

        var plans = form.Files.GetFiles("plan");
        if (plans.Count > 1 || (plans.Count == 1 && plan is not null))
        {
            throw new BadHttpRequestException("Name one plan: by one part called `plan`, or by the query `plan`.");
        }

        var files = await FilesAsync([.. form.Files], cancel);
        return files is [var only] ? One(only.Name, only.Bytes, plan) : Of("form", files, plan ?? (plans.Count == 1 ? plans[0].FileName : null));
    }

    private static HandedFile Handed(SetFile file) => new(file.Name, file.Bytes);
}
