using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>Who wants to know of what. A mail goes to its owner: of its own submissions to a submitter, of all to a reviewer; webhooks are set by administrators and tell of all.</summary>
public sealed class Subscriptions(RegisterDatabase database)
{
    /// <summary>Most subscriptions of one owner, and most webhooks: far above what is of use (our judgement).</summary>
    public const int Most = 20;

    /// <summary>Begins a subscription.</summary>
    /// <param name="wanted">What is asked for; target and secret are of a form that can be used.</param>
    /// <param name="caller">Who asks; an administrator for a webhook.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">The caller may not, no event is named, a text is too long or odd, there is the same one already, or there are too many.</exception>
    public Task<Subscription> AddAsync(NewSubscription wanted, Caller caller, CancellationToken cancel)
    {
        if (wanted.Channel == Channel.Webhook && caller.Role != Role.Administrator)
        {
            throw new RefusedException(Refusal.NotAllowed, "Only an administrator sets a webhook.");
        }

        if (wanted.Events.Count == 0)
        {
            throw new RefusedException(Refusal.BadRequest, "Choose at least one event.");
        }

        CallerText.Target(wanted.Target);
        var contract = wanted.Contract?.Trim() is { Length: > 0 } named ? named : null;
        if (contract is not null)
        {
            CallerText.Contract(contract);
        }

        return database.InTransactionAsync(context => AddAsync(context, wanted with { Contract = contract }, caller, cancel), cancel);
    }

    /// <summary>The mail subscriptions of a caller, the oldest first. Its role is noted: a person from an identity provider may have another one by now.</summary>
    public async Task<IReadOnlyList<Subscription>> OfAsync(Caller caller, CancellationToken cancel)
    {
        await using var context = database.Open();
        await context.Subscriptions.Where(one => one.Owner == caller.Id && one.OwnerRole != caller.Role).ExecuteUpdateAsync(set => set.SetProperty(one => one.OwnerRole, caller.Role), cancel);
        return await ListAsync(context.Subscriptions.Where(one => one.Owner == caller.Id && one.Channel == Channel.Mail), cancel);
    }

    /// <summary>All subscriptions of a channel, the oldest first, for administrators.</summary>
    public async Task<IReadOnlyList<Subscription>> AllAsync(Channel channel, CancellationToken cancel)
    {
        await using var context = database.Open();
        return await ListAsync(context.Subscriptions.Where(one => one.Channel == channel), cancel);
    }

    /// <summary>Ends a subscription: nothing that waits is sent any more, and its secret is forgotten.</summary>
    /// <param name="id">Id.</param>
    /// <param name="caller">Its owner, or an administrator.</param>
    /// <param name="cancel">Ends it; nothing is stored then.</param>
    /// <exception cref="RefusedException">There is none that the caller may end.</exception>
    public async Task EndAsync(string id, Caller caller, CancellationToken cancel)
    {
        CallerText.Id(id);
        await using var context = database.Open();
        var chief = caller.Role == Role.Administrator;
        if (await EndAsync(context.Subscriptions.Where(one => one.Id == id && one.EndedAt == null && (one.Owner == caller.Id || chief)), database.Now, cancel) == 0)
        {
            throw new RefusedException(Refusal.NotFound, "There is no subscription of that id.");
        }
    }

    internal static Task<int> EndAsync(IQueryable<SubscriptionRow> rows, DateTimeOffset now, CancellationToken cancel) =>
        rows.ExecuteUpdateAsync(set => set.SetProperty(one => one.EndedAt, now).SetProperty(one => one.Secret, (string?)null), cancel);

    internal static Subscription ToSubscription(SubscriptionRow row) => new(
        row.Id, row.Channel, row.Target, [.. row.Events.Split(' ').Select(Enum.Parse<NoticeEvent>)], row.Contract, row.Owner, row.OwnerName, row.CreatedAt);

    private async Task<Subscription> AddAsync(RegisterContext context, NewSubscription wanted, Caller caller, CancellationToken cancel)
    {
        await context.HoldKeysAsync(cancel);
        var others = await context.Subscriptions.Where(one => one.EndedAt == null && one.Channel == wanted.Channel && (one.Owner == caller.Id || wanted.Channel == Channel.Webhook)).ToListAsync(cancel);
        if (others.Count >= Most)
        {
            throw new RefusedException(Refusal.WrongState, FormattableString.Invariant($"There are {Most} already. End one first."));
        }

        if (others.Exists(one => string.Equals(one.Target, wanted.Target, StringComparison.OrdinalIgnoreCase) && string.Equals(one.Contract, wanted.Contract, StringComparison.OrdinalIgnoreCase)))
        {
            throw new RefusedException(Refusal.WrongState, "There is one for this address and contract already. End that one first.");
        }

        var row = new SubscriptionRow
        {
            Id = database.NewId(),
            Channel = wanted.Channel,
            Target = wanted.Target,
            Secret = wanted.Secret,
            Events = string.Join(' ', wanted.Events.Distinct().Order()),
            Contract = wanted.Contract,
            Owner = caller.Id,
            OwnerName = caller.Name,
            OwnerRole = caller.Role,
            CreatedAt = database.Now,
        };
        context.Subscriptions.Add(row);
        return ToSubscription(row);
    }

    private static async Task<IReadOnlyList<Subscription>> ListAsync(IQueryable<SubscriptionRow> rows, CancellationToken cancel) =>
        [.. (await rows.AsNoTracking().Where(one => one.EndedAt == null).OrderBy(one => one.CreatedAt).ThenBy(one => one.Id).ToListAsync(cancel)).Select(ToSubscription)];
}
