using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>The record of a shift as it was handed in.</summary>
/// <param name="Upload">Its number among the records of the submission, from 1.</param>
/// <param name="At">When, UTC.</param>
/// <param name="By">Who, by key.</param>
/// <param name="ByName">Who, by name.</param>
/// <param name="Files">Its files in their order, exactly as they came.</param>
public sealed record StoredRecord(int Upload, DateTimeOffset At, string By, string ByName, IReadOnlyList<HandedFile> Files);

/// <summary>Records of shifts, which belong to the plan that was submitted. Each upload stays as it came; what is corrected is handed in again beside it.</summary>
public sealed class ShiftRecords(RegisterDatabase database)
{
    /// <summary>Most records of one submission: judgement, a shift has a handful of them.</summary>
    public const int Most = 20;

    /// <summary>Keeps a record.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="files">Its files, which can be read as a record.</param>
    /// <param name="caller">Who hands it in: whoever submitted the plan, or a reviewer.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <returns>Its number.</returns>
    /// <exception cref="RefusedException">There is no such submission for the caller, or it has as many records as it may.</exception>
    public Task<int> AddAsync(string id, IReadOnlyList<HandedFile> files, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        foreach (var file in files)
        {
            CallerText.FileName(file.Name);
        }

        return database.InTransactionAsync(context => AddAsync(context, id, files, caller, cancel), Moment.SubmissionBeforeCommit, Moment.SubmissionCommitted, cancel);
    }

    /// <summary>The records of a submission, the first one first; empty when there are none that the caller may see.</summary>
    /// <param name="id">Id of the submission.</param>
    /// <param name="caller">Who asks.</param>
    /// <param name="cancel">Ends it.</param>
    public async Task<IReadOnlyList<StoredRecord>> ListAsync(string id, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        var rows = await context.Submissions.AsNoTracking().Where(row => row.Id == id && (caller.SeesAll || row.Submitter == caller.Id))
            .Join(context.RecordFiles, row => row.Number, file => file.Number, (_, file) => file)
            .OrderBy(file => file.Upload).ThenBy(file => file.Place).ToListAsync(cancel);
        return [.. rows.GroupBy(row => row.Upload).Select(one => new StoredRecord(one.Key, one.First().At, one.First().By, one.First().ByName, [.. one.Select(file => new HandedFile(file.Name, file.Bytes))]))];
    }

    private async Task<int> AddAsync(RegisterContext context, string id, IReadOnlyList<HandedFile> files, Caller caller, CancellationToken cancel)
    {
        var row = await context.HeldAsync(id, cancel);
        if (row is null || (!caller.SeesAll && !Decisions.IsOwn(row, caller)))
        {
            throw new RefusedException(Refusal.NotFound, "There is no submission of that id.");
        }

        var upload = 1 + (await context.RecordFiles.Where(file => file.Number == row.Number).MaxAsync(file => (int?)file.Upload, cancel) ?? 0);
        if (upload > Most)
        {
            throw new RefusedException(Refusal.WrongState, FormattableString.Invariant($"There are {Most} records already. Hand the rest in with another revision."));
        }

        var now = database.Now;
        row.SoughtAt = null;
        context.RecordFiles.AddRange(files.Select((file, place) => new RecordFileRow
        {
            Number = row.Number,
            Upload = upload,
            Place = place + 1,
            Name = file.Name,
            Bytes = file.Bytes,
            At = now,
            By = caller.Id,
            ByName = caller.Name,
        }));
        Mapping.Note(context, row, RegisterEvent.Recorded, caller, now, FormattableString.Invariant($"record {upload}, {files.Count} files"));
        return upload;
    }
}
