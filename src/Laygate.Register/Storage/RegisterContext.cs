using System.Text;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace Laygate.Register.Storage;

/// <summary>The tables. Both databases have the same ones; each has its own migrations.</summary>
internal abstract class RegisterContext(DbContextOptions options) : DbContext(options)
{
    /// <summary>What writes notices and digests beside what is saved; null for the tool that writes migrations.</summary>
    public RegisterDatabase? Owner { get; init; }

    public DbSet<SubmissionRow> Submissions => Set<SubmissionRow>();

    public DbSet<TextRow> Texts => Set<TextRow>();

    public DbSet<FileRow> Files => Set<FileRow>();

    public DbSet<ArchiveRow> Archives => Set<ArchiveRow>();

    public DbSet<ReportRow> Reports => Set<ReportRow>();

    public DbSet<PictureRow> Pictures => Set<PictureRow>();

    public DbSet<JobRow> Jobs => Set<JobRow>();

    public DbSet<HistoryRow> History => Set<HistoryRow>();

    public DbSet<DocumentRow> Documents => Set<DocumentRow>();

    public DbSet<RecordFileRow> RecordFiles => Set<RecordFileRow>();

    public DbSet<CommentRow> Comments => Set<CommentRow>();

    public DbSet<ReplacementRow> Replacements => Set<ReplacementRow>();

    public DbSet<KeyRow> Keys => Set<KeyRow>();

    public DbSet<KeyHistoryRow> KeyHistory => Set<KeyHistoryRow>();

    public DbSet<IdempotencyRow> Idempotency => Set<IdempotencyRow>();

    public DbSet<SessionRow> Sessions => Set<SessionRow>();

    public DbSet<KeptFormRow> KeptForms => Set<KeptFormRow>();

    public DbSet<ProtectionKeyRow> ProtectionKeys => Set<ProtectionKeyRow>();

    public DbSet<SubscriptionRow> Subscriptions => Set<SubscriptionRow>();

    public DbSet<NoticeRow> Notices => Set<NoticeRow>();

    /// <summary>SQL of one due piece of work that nobody holds; parameter: now in ticks.</summary>
    protected abstract string DueSql { get; }

    /// <summary>SQL of one due notice that nobody sends and whose receiver gets no other one now; parameter: now in ticks.</summary>
    protected abstract string DueNoticeSql { get; }

    /// <summary>SQL of one piece of work; parameters: number and screening.</summary>
    protected abstract string JobSql { get; }

    /// <summary>SQL of one submission; parameter: id.</summary>
    protected abstract string SubmissionSql { get; }

    /// <summary>SQL that keeps others from issuing keys until the transaction ends; null where every transaction does.</summary>
    protected abstract string? HoldKeysSql { get; }

    /// <summary>SQL that waits for whoever writes an entry and keeps others from it until the transaction ends; null where every transaction does.</summary>
    protected abstract string? HoldBooksSql { get; }

    /// <summary>Waits for whoever writes an entry of a book, and keeps others from it until the transaction ends.</summary>
    public Task HoldBooksAsync(CancellationToken cancel) => HoldBooksSql is { } sql ? Database.ExecuteSqlRawAsync(sql, cancel) : Task.CompletedTask;

    /// <summary>Keeps others from issuing keys until the transaction ends.</summary>
    public Task HoldKeysAsync(CancellationToken cancel) => HoldKeysSql is { } sql ? Database.ExecuteSqlRawAsync(sql, cancel) : Task.CompletedTask;

    /// <summary>One piece of work that is due and that nobody holds; it stays the caller's until the transaction ends.</summary>
    public async Task<JobRow?> DueJobAsync(DateTimeOffset now, CancellationToken cancel) =>
        (await Jobs.FromSqlRaw(DueSql, now.UtcTicks).ToListAsync(cancel)).SingleOrDefault();

    /// <summary>One notice that is due and that nobody sends; it stays the caller's until the transaction ends.</summary>
    public async Task<NoticeRow?> DueNoticeAsync(DateTimeOffset now, CancellationToken cancel) =>
        (await Notices.FromSqlRaw(DueNoticeSql, now.UtcTicks).ToListAsync(cancel)).SingleOrDefault();

    /// <summary>A piece of work, held until the transaction ends.</summary>
    public async Task<JobRow?> HeldJobAsync(long number, int screening, CancellationToken cancel) =>
        (await Jobs.FromSqlRaw(JobSql, number, screening).ToListAsync(cancel)).SingleOrDefault();

    /// <summary>A submission, held until the transaction ends.</summary>
    public async Task<SubmissionRow?> HeldAsync(string id, CancellationToken cancel) =>
        (await Submissions.FromSqlRaw(SubmissionSql, id).ToListAsync(cancel)).SingleOrDefault();

    /// <inheritdoc/>
    public override async Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        // Here, so that nothing is saved without them, however often a transaction saves.
        if (Owner is { } owner)
        {
            await Outbox.FillAsync(this, owner, cancellationToken);
            Seals.Fill(this, owner);
        }

        return await base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    /// <inheritdoc/>
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        // SQLite cannot compare moments and PostgreSQL refuses some: both store UTC ticks.
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcTicks>();
        configurationBuilder.Properties<SubmissionState>().HaveConversion<string>();
        configurationBuilder.Properties<RegisterEvent>().HaveConversion<string>();
        configurationBuilder.Properties<ContentKind>().HaveConversion<string>();
        configurationBuilder.Properties<JobState>().HaveConversion<string>();
        configurationBuilder.Properties<KeyEvent>().HaveConversion<string>();
        configurationBuilder.Properties<Role>().HaveConversion<string>();
        configurationBuilder.Properties<Channel>().HaveConversion<string>();
        configurationBuilder.Properties<NoticeEvent>().HaveConversion<string>();
        configurationBuilder.Properties<NoticeState>().HaveConversion<string>();
    }

    /// <inheritdoc/>
    protected override void OnModelCreating(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<SubmissionRow>(row =>
        {
            row.HasKey(one => one.Number);
            row.Property(one => one.Number).ValueGeneratedOnAdd();
            row.Property(one => one.Id).IsRequired();
            row.HasIndex(one => one.Id).IsUnique();
            row.HasIndex(one => new { one.Series, one.Revision }).IsUnique();
            row.HasIndex(one => new { one.Submitter, one.Number });
            row.HasIndex(one => new { one.State, one.Number });
            row.Property(one => one.Version).IsConcurrencyToken();
        });
        Owned<TextRow>(modelBuilder).HasKey(one => one.Number);
        Owned<FileRow>(modelBuilder).HasKey(one => new { one.Number, one.Place });
        Owned<ArchiveRow>(modelBuilder).HasKey(one => one.Number);
        Owned<ReportRow>(modelBuilder).HasKey(one => new { one.Number, one.Screening });
        Owned<PictureRow>(modelBuilder).HasKey(one => new { one.Number, one.Screening });
        Owned<DocumentRow>(modelBuilder).HasKey(one => new { one.Number, one.Screening, one.Name });
        Owned<RecordFileRow>(modelBuilder).HasKey(one => new { one.Number, one.Upload, one.Place });
        var job = Owned<JobRow>(modelBuilder);
        job.HasKey(one => new { one.Number, one.Screening });
        job.HasIndex(one => new { one.DueAt, one.Number }).HasFilter("\"state\" IN ('Queued', 'Leased')");
        var history = Owned<HistoryRow>(modelBuilder);
        history.HasKey(one => one.Entry);
        history.Property(one => one.Entry).ValueGeneratedOnAdd();
        history.HasIndex(one => new { one.Number, one.Entry });
        var comment = Owned<CommentRow>(modelBuilder);
        comment.HasKey(one => one.Entry);
        comment.Property(one => one.Entry).ValueGeneratedOnAdd();
        comment.HasIndex(one => new { one.Series, one.Entry });
        var replaced = Owned<ReplacementRow>(modelBuilder);
        replaced.HasKey(one => new { one.Entry, one.Line });
        replaced.HasOne(one => one.Said).WithMany().HasForeignKey(one => one.Entry).OnDelete(DeleteBehavior.Restrict);
        replaced.HasIndex(one => new { one.Number, one.Kind, one.Of, one.Place, one.Name });
        modelBuilder.Entity<KeyRow>(row =>
        {
            row.HasKey(one => one.Id);
            row.HasIndex(one => one.Prefix).IsUnique();
        });
        modelBuilder.Entity<KeyHistoryRow>(row =>
        {
            row.HasKey(one => one.Entry);
            row.Property(one => one.Entry).ValueGeneratedOnAdd();
            row.HasIndex(one => new { one.KeyId, one.Event }).IsUnique();
            row.HasOne<KeyRow>().WithMany().HasForeignKey(one => one.KeyId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<IdempotencyRow>().HasKey(one => new { one.Caller, one.Key });
        modelBuilder.Entity<SubscriptionRow>().HasKey(one => one.Id);
        modelBuilder.Entity<NoticeRow>(row =>
        {
            row.HasKey(one => one.Id);
            row.HasOne(one => one.What).WithMany().HasForeignKey(one => one.Entry).OnDelete(DeleteBehavior.Restrict);
            row.HasOne<SubscriptionRow>().WithMany().HasForeignKey(one => one.Subscription).OnDelete(DeleteBehavior.Restrict);
            row.HasIndex(one => new { one.Entry, one.Subscription }).IsUnique();
            row.Property(one => one.Attempt).IsConcurrencyToken();
            row.HasIndex(one => new { one.DueAt, one.Entry }).HasFilter("\"state\" IN ('Waiting', 'Sending')");
        });
        SignedIn(modelBuilder);
        PlainNames(modelBuilder);
    }

    /// <summary>SQL of a due notice whose receiver gets no other one now, so that a slow receiver holds up nobody else.</summary>
    /// <param name="holds">What holds the row.</param>
    protected static string Due(string holds) =>
        "SELECT n.* FROM notices n WHERE n.state IN ('Waiting', 'Sending') AND n.due_at <= {0} AND NOT EXISTS "
        + "(SELECT 1 FROM notices o WHERE o.subscription = n.subscription AND o.state = 'Sending' AND o.due_at > {0}) ORDER BY n.due_at, n.entry LIMIT 1" + holds;

    private static void SignedIn(ModelBuilder modelBuilder)
    {
        modelBuilder.Entity<SessionRow>(row =>
        {
            row.HasKey(one => one.Id);
            row.HasIndex(one => one.SecretHash).IsUnique();
            row.HasIndex(one => one.Caller);
            row.HasOne<KeyRow>().WithMany().HasForeignKey(one => one.KeyId).OnDelete(DeleteBehavior.Restrict);
        });
        modelBuilder.Entity<KeptFormRow>(row =>
        {
            row.HasKey(one => new { one.Session, one.Page });
            row.HasOne<SessionRow>().WithMany().HasForeignKey(one => one.Session).OnDelete(DeleteBehavior.Cascade);
        });
        modelBuilder.Entity<ProtectionKeyRow>().HasKey(one => one.Entry);
    }

    private static Microsoft.EntityFrameworkCore.Metadata.Builders.EntityTypeBuilder<T> Owned<T>(ModelBuilder model)
        where T : class
    {
        var row = model.Entity<T>();
        row.Property<long>("Number").ValueGeneratedNever();
        row.HasOne<SubmissionRow>().WithMany().HasForeignKey("Number").OnDelete(DeleteBehavior.Restrict);
        return row;
    }

    // Lower case with underscores, so that SQL by hand needs no quotes on either database.
    private static void PlainNames(ModelBuilder model)
    {
        foreach (var entity in model.Model.GetEntityTypes())
        {
            entity.SetTableName(entity.ClrType.Name switch
            {
                nameof(SubmissionRow) => "submissions",
                nameof(TextRow) => "texts",
                nameof(FileRow) => "files",
                nameof(ArchiveRow) => "archives",
                nameof(ReportRow) => "reports",
                nameof(DocumentRow) => "documents",
                nameof(RecordFileRow) => "record_files",
                nameof(CommentRow) => "comments",
                nameof(PictureRow) => "pictures",
                nameof(JobRow) => "jobs",
                nameof(HistoryRow) => "history",
                nameof(ReplacementRow) => "replacements",
                nameof(KeyRow) => "access_keys",
                nameof(KeyHistoryRow) => "key_history",
                nameof(SessionRow) => "sessions",
                nameof(KeptFormRow) => "kept_forms",
                nameof(ProtectionKeyRow) => "protection_keys",
                nameof(SubscriptionRow) => "subscriptions",
                nameof(NoticeRow) => "notices",
                _ => "idempotency",
            });
            foreach (var property in entity.GetProperties())
            {
                property.SetColumnName(LowerCase(property.Name));
            }
        }
    }

    private static string LowerCase(string name)
    {
        var text = new StringBuilder();
        foreach (var letter in name)
        {
            if (char.IsAsciiLetterUpper(letter) && text.Length > 0)
            {
                text.Append('_');
            }

            text.Append(char.ToLowerInvariant(letter));
        }

        return text.ToString();
    }

    private sealed class UtcTicks() : ValueConverter<DateTimeOffset, long>(
        moment => moment.UtcTicks, ticks => new DateTimeOffset(ticks, TimeSpan.Zero));
}
