using Laygate.Model.Records;

namespace Laygate.Reading.Records;

/// <summary>Volumes of a tank in a row of bond coat.</summary>
internal static class TankRows
{
    // Colder a tank does not spray, hotter no binder is kept.
    private const double Coldest = 0;
    private const double Hottest = 250;

    /// <summary>What was taken from the tank; none where the row has no volume or no temperature.</summary>
    /// <param name="row">The row.</param>
    /// <param name="note">Says what is missing.</param>
    /// <returns>The volumes, or why the row cannot be.</returns>
    public static (TankVolume? Taken, (string Message, string Hint)? Wrong) Of(RecordRow row, Action<RowPlace, string> note)
    {
        var (volume, before, after) = (row.Number("volume"), row.Number("tank_before"), row.Number("tank_after"));
        if (Wrong(row, volume, before, after) is { } wrong)
        {
            return (null, wrong);
        }

        if ((volume ?? before) is not { } first)
        {
            return (null, null);
        }

        if (row.Number("temperature") is not { } temperature)
        {
            note(row.Place, "The volume has no temperature, so that it cannot be brought to 15 °C: it does not count. Map `temperature`, or give all rows one with `value`.");
            return (null, null);
        }

        return (volume is null ? new TankVolume(first, temperature, after!.Value, row.Number("temperature_after") ?? temperature) : new TankVolume(first, temperature, 0, temperature), null);
    }

    private static (string Message, string Hint)? Wrong(RecordRow row, double? volume, double? before, double? after) => true switch
    {
        _ when volume is not null && (before is not null || after is not null) => ("The row has a volume and readings of the tank.", "Keep one of the two."),
        _ when before is null != (after is null) => ("The tank was read once only.", "Write the volume before and the volume after spraying."),
        _ when volume < 0 || before < 0 || after < 0 => ("A volume is below zero.", "Correct it."),
        _ when after > before => ("The tank holds more after spraying than before.", "Correct one of the two volumes, or write one row for each filling."),
        _ when row.Number("temperature") is < Coldest or > Hottest || row.Number("temperature_after") is < Coldest or > Hottest => ("The temperature of the tank is not between 0 and 250 °C.", "Correct it, or the unit in the mapping."),
        _ => null,
    };
}
