using Microsoft.Extensions.Options;

namespace Laygate.Service.Settings;

/// <summary>Refuses settings that cannot work, when the service starts and not with the first request.</summary>
internal sealed class SettingsCheck : IValidateOptions<ServiceSettings>
{
    public ValidateOptionsResult Validate(string? name, ServiceSettings options)
    {
        List<string> wrong =
        [
            .. Range(nameof(options.Workers), options.Workers, 0, 64),
            .. Range(nameof(options.CheckSlots), options.CheckSlots, 1, 256),
            .. Range(nameof(options.CheckQueue), options.CheckQueue, 0, 10_000),
            .. Range(nameof(options.CheckSeconds), options.CheckSeconds, 0.1, 600),
            .. Range(nameof(options.ScreeningSeconds), options.ScreeningSeconds, 1, 3600),
            .. Range(nameof(options.ScreeningPatience), options.ScreeningPatience, 0, 3600),
            .. Range(nameof(options.LeaseSeconds), options.LeaseSeconds, 1, 3600),
            .. Range(nameof(options.MaxFailures), options.MaxFailures, 1, 100),
            .. Range(nameof(options.RequestsPerMinute), options.RequestsPerMinute, 1, 1_000_000),
            .. Range(nameof(options.InboxSettleSeconds), options.InboxSettleSeconds, 0.1, 600),
        ];
        if (string.IsNullOrWhiteSpace(options.Data))
        {
            wrong.Add("Laygate:Data must name a folder that the service may write to.");
        }

        if (options.Inbox.Length > 0 && !Directory.Exists(options.Inbox))
        {
            wrong.Add("Laygate:Inbox names no folder.");
        }

        if (options.Inbox.Length > 0 && !OperatingSystem.IsLinux())
        {
            wrong.Add("Laygate:Inbox works on Linux only: elsewhere files cannot be opened without following links.");
        }

        if (!Enum.IsDefined(options.AcceptFailing))
        {
            wrong.Add($"Laygate:AcceptFailing must be one of: {string.Join(", ", Enum.GetNames<Laygate.Register.FailingAcceptance>())}.");
        }

        if (options.Authority.Length > 0 && options.Audience.Length == 0)
        {
            wrong.Add("Laygate:Authority needs Laygate:Audience, or tokens made for others would be accepted.");
        }

        return wrong.Count > 0 ? ValidateOptionsResult.Fail(wrong) : ValidateOptionsResult.Success;
    }

    private static IEnumerable<string> Range(string name, double value, double low, double high)
    {
        if (!(value >= low && value <= high))
        {
            yield return FormattableString.Invariant($"Laygate:{name} is {value}; it must be between {low} and {high}.");
        }
    }
}
