using System.Security.Cryptography;
using Laygate.Register;
using Laygate.Service.Access;

namespace Laygate.Service.Api;

/// <summary>A file of a submission, without its content.</summary>
/// <param name="Name">Its name in the set, folders divided by <c>/</c>.</param>
/// <param name="Bytes">Its length, bytes.</param>
/// <param name="Hash">SHA-256, lower-case hex.</param>
/// <param name="Plan">Whether it is the plan.</param>
internal sealed record SubmittedFile(string Name, int Bytes, string Hash, bool Plan)
{
    /// <summary>What is known of a file.</summary>
    public static SubmittedFile Of(string name, byte[] bytes, bool isPlan) => new(name, bytes.Length, Convert.ToHexStringLower(SHA256.HashData(bytes)), isPlan);
}

/// <summary>The files of submissions, exactly as they were sent.</summary>
internal static class StoredFiles
{
    public const string Bytes = "application/octet-stream";

    public static void MapStoredFiles(this IEndpointRouteBuilder known)
    {
        known.MapGet("/{id}/files", FilesAsync).WithName("ListFiles").WithSummary("The plan and the files that came with it")
            .WithDescription("Names, lengths and hashes, the plan first, the others in the order in which they came.").Produces<IReadOnlyList<SubmittedFile>>().Missing();
        known.MapGet("/{id}/files/{**name}", FileAsync).WithName("GetFile").WithSummary("One file exactly as sent")
            .WithDescription("The name is that of the list, its folders divided by `/`.").Produces<string>(StatusCodes.Status200OK, Bytes).Missing();
        known.MapGet("/{id}/archive", ArchiveAsync).WithName("GetArchive").WithSummary("The archive exactly as sent")
            .WithDescription("There is none where the plan came by itself or in a form.").Produces<string>(StatusCodes.Status200OK, Bodies.ArchiveTypes[0]).Missing();
    }

    /// <summary>What is known of the files of a submission.</summary>
    public static async Task<IReadOnlyList<SubmittedFile>> ListAsync(RegisterReader reader, Submission one, Caller caller, CancellationToken cancel) =>
        await reader.TextAsync(one.Id, caller, cancel) is not { } text ? []
        : [SubmittedFile.Of(one.FileName, text, isPlan: true), .. one.Files == 0 ? [] : (await reader.FilesAsync(one.Id, caller, cancel)).Select(file => SubmittedFile.Of(file.Name, file.Bytes, isPlan: false))];

    /// <summary>One file as a download; null when there is none that the caller may see.</summary>
    public static async Task<IResult?> DownloadAsync(RegisterReader reader, string id, string name, Caller caller, CancellationToken cancel)
    {
        if (await reader.FindAsync(id, caller, cancel) is not { } one)
        {
            return null;
        }

        var bytes = string.Equals(one.FileName, name, StringComparison.Ordinal)
            ? await reader.TextAsync(id, caller, cancel)
            : (await reader.FilesAsync(id, caller, cancel)).FirstOrDefault(file => string.Equals(file.Name, name, StringComparison.Ordinal))?.Bytes;
        return bytes is null ? null : TypedResults.File(bytes, Bytes, name.Split('/')[^1]);
    }

    /// <summary>The archive as a download; null when there is none that the caller may see.</summary>
    public static async Task<IResult?> DownloadArchiveAsync(RegisterReader reader, string id, Caller caller, CancellationToken cancel) =>
        await reader.ArchiveAsync(id, caller, cancel) is { } archive ? TypedResults.File(archive.Bytes, Bodies.ArchiveTypes[0], archive.Name) : null;

    private static async Task<IResult> FilesAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel)
    {
        var caller = Callers.Need(context);
        return await reader.FindAsync(id, caller, cancel) is { } one ? TypedResults.Ok(await ListAsync(reader, one, caller, cancel)) : SubmissionsApi.NotThere();
    }

    private static async Task<IResult> FileAsync(HttpContext context, RegisterReader reader, string id, string name, CancellationToken cancel) =>
        await DownloadAsync(reader, id, name, Callers.Need(context), cancel) ?? SubmissionsApi.NotThere();

    private static async Task<IResult> ArchiveAsync(HttpContext context, RegisterReader reader, string id, CancellationToken cancel) =>
        await DownloadArchiveAsync(reader, id, Callers.Need(context), cancel) ?? SubmissionsApi.NotThere();
}
