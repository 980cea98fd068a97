using System.Globalization;
using System.Text.RegularExpressions;
using Laygate.Reading.Yaml;

namespace Laygate.Reading.Records;

/// <summary>Reads the cells of one file as its mapping declares them. Each method gives the value, or in <c>wrong</c> why there is none.</summary>
internal sealed partial class CellReader(FileMapping file)
{
    /// <summary>Spreadsheets show these in place of a value that they could not work out.</summary>
    private static readonly string[] Errors = ["#REF!", "#VALUE!", "#DIV/0!", "#NAME?", "#N/A", "#NUM!", "#NULL!", "#BEZUG!", "#WERT!"];

    /// <summary>Why a cell can be no value of any form; null when it may be one.</summary>
    public static string? Damage(string cell, CellForm form)
    {
        if (cell[0] == '#' && Array.Exists(Errors, error => cell.StartsWith(error, StringComparison.OrdinalIgnoreCase)))
        {
            return $"The spreadsheet shows the error {TokenNames.Quote(cell)} in place of a value.";
        }

        var formula = cell[0] is '=' or '@' || (form == CellForm.Text && cell[0] is '+' or '-' && cell.Any(letter => !char.IsAsciiDigit(letter) && letter is not ('+' or '-' or '.' or ',' or '\'' or ' '))) || (cell.Length > 1 && cell[0] is '+' or '-' && !char.IsAsciiDigit(cell[1]) && cell[1] is not ('.' or ','));
        return formula && cell.Length > 1 ? $"{TokenNames.Quote(cell)} is a formula, not a value."
            : form == CellForm.Text && cell.Length > 3 && cell[1] is ('.' or ',') && Scientific().IsMatch(cell) ? $"{TokenNames.Quote(cell)} is a long number that a spreadsheet has shortened; its digits are lost."
            : null;
    }

    /// <summary>A number.</summary>
    public double? Number(string cell, out string? wrong)
    {
        var plain = file.Grouping is { } grouping ? WithoutGroups(cell, grouping) : cell;
        wrong = null;
        if (plain is not null && double.TryParse(file.DecimalMark == ',' ? AsPoint(plain) : plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var number))
        {
            return number;
        }

        wrong = $"{TokenNames.Quote(cell)} is no number with a decimal {(file.DecimalMark == ',' ? "comma" : "point")}{(file.Grouping is null ? string.Empty : " and the marks between thousands")} that the mapping declares.";
        return null;
    }

    /// <summary>A whole number.</summary>
    public static int? Count(string cell, out string? wrong)
    {
        wrong = int.TryParse(cell, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var count) ? null : $"{TokenNames.Quote(cell)} is no whole number.";
        return wrong is null ? count : null;
    }

    /// <summary>A station in m.</summary>
    public double? Station(string cell, ColumnMapping column, out string? wrong)
    {
        if (column.Form == StationForm.Plain)
        {
            var plain = Number(cell, out wrong);
            wrong = wrong is not null && cell.Contains('+', StringComparison.Ordinal) ? $"{TokenNames.Quote(cell)} is no plain number; the mapping can declare `unit: km+m` or `unit: 100ft+ft`." : wrong;
            return plain is { } number ? column.Unit!.ToSi(number) : null;
        }

        var parts = cell.Split('+');
        if (parts.Length == 2 && Count(parts[0], out wrong) is { } whole && Number(parts[1], out wrong) is { } rest && rest >= 0)
        {
            return column.Form == StationForm.KilometresAndMetres ? (whole * 1000) + rest : column.Unit!.ToSi((whole * 100) + rest);
        }

        wrong = $"{TokenNames.Quote(cell)} is no station of the form {(column.Form == StationForm.KilometresAndMetres ? "12+500" : "118+50")} that the mapping declares.";
        return null;
    }

    /// <summary>A word of a closed list, after the words of the file.</summary>
    public static string? Word(string cell, ColumnMapping column, out string? wrong)
    {
        var word = column.Words.GetValueOrDefault(cell, cell);
        wrong = column.Quantity.Words.Contains(word, StringComparer.Ordinal) ? null
            : $"{TokenNames.Quote(cell)} is none of {string.Join(", ", column.Quantity.Words)}; the mapping can say which under `words`.";
        return wrong is null ? word : null;
    }

    /// <summary>A date.</summary>
    public DateOnly? Date(string cell, out string? wrong)
    {
        wrong = null;
        if (file.Dates == DateOrder.YearMonthDay && DateOnly.TryParseExact(cell, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var plain) && plain.Year is >= 1900 and <= 2199)
        {
            return plain;
        }

        var match = DateForm().Match(cell);
        if (match.Success)
        {
            int[] parts = [.. match.Groups.Values.Skip(1).Select(group => int.Parse(group.ValueSpan, CultureInfo.InvariantCulture))];
            var (year, month, day) = file.Dates switch
            {
                DateOrder.DayMonthYear => (parts[2], parts[1], parts[0]),
                DateOrder.MonthDayYear => (parts[2], parts[0], parts[1]),
                _ => (parts[0], parts[1], parts[2]),
            };
            if (year is >= 1900 and <= 2199 && month is >= 1 and <= 12 && day >= 1 && day <= DateTime.DaysInMonth(year, month))
            {
                return new DateOnly(year, month, day);
            }
        }

        wrong = $"{TokenNames.Quote(cell)} is no date in the order {Order(file.Dates)} that the mapping declares.";
        return null;
    }

    /// <summary>A time of day, with the date and the offset from UTC where the cell has them.</summary>
    public CellTime? Time(string cell, out string? wrong)
    {
        if (Usual(cell) is { } usual)
        {
            var day = usual.DateLength > 0 ? Date(cell[..usual.DateLength], out wrong) : null;
            wrong = usual.DateLength > 0 && day is null ? $"{TokenNames.Quote(cell)} is no date in the order {Order(file.Dates)} that the mapping declares." : null;
            return wrong is null ? new CellTime(day, usual.Clock, Offset: null) : null;
        }

        var match = TimeForm().Match(cell);
        wrong = null;
        if (match.Success && Clock(match) is { } clock)
        {
            var date = match.Groups["date"] is { Success: true } stated ? Date(stated.Value, out wrong) : null;
            return wrong is null ? new CellTime(date, clock, OffsetOf(match.Groups["offset"].Value)) : null;
        }

        wrong = $"{TokenNames.Quote(cell)} is no time such as 21:15, with or without its date.";
        return null;
    }

    // HH:mm, alone or behind a date of ten letters and one blank or T: what nearly every cell holds, without the cost of the general form.
    private static (int DateLength, TimeSpan Clock)? Usual(string cell)
    {
        var at = cell.Length == 16 && cell[10] is (' ' or 'T') ? 11 : 0;
        if (cell.Length - at != 5 || cell[at + 2] != ':' || !Digits(cell, at) || !Digits(cell, at + 3))
        {
            return null;
        }

        var (hour, minute) = (((cell[at] - '0') * 10) + cell[at + 1] - '0', ((cell[at + 3] - '0') * 10) + cell[at + 4] - '0');
        return hour < 24 && minute < 60 ? (Math.Max(0, at - 1), new TimeSpan(hour, minute, 0)) : null;
    }

    private static bool Digits(string cell, int at) => char.IsAsciiDigit(cell[at]) && char.IsAsciiDigit(cell[at + 1]);

    private static TimeSpan? Clock(Match match)
    {
        var (hour, minute) = (Whole(match, "hour"), Whole(match, "minute"));
        var second = match.Groups["second"].Success ? Whole(match, "second") : 0;
        if (match.Groups["half"].Value is { Length: > 0 } half)
        {
            hour = hour is < 1 or > 12 ? 99 : (hour % 12) + (half[0] is 'p' or 'P' ? 12 : 0);
        }

        return hour < 24 && minute < 60 && second < 60 ? new TimeSpan(hour, minute, second) : null;
    }

    private static int Whole(Match match, string group) => int.Parse(match.Groups[group].ValueSpan, CultureInfo.InvariantCulture);

    private static TimeSpan? OffsetOf(string text) => text.Length == 0 ? null
        : text is "Z" ? TimeSpan.Zero
        : (text[0] == '-' ? -1 : 1) * new TimeSpan(int.Parse(text.AsSpan(1, 2), CultureInfo.InvariantCulture), int.Parse(text.AsSpan(text.Length - 2), CultureInfo.InvariantCulture), 0);

    private static string AsPoint(string text) => text.Contains('.', StringComparison.Ordinal) ? "?" : text.Replace(',', '.');

    // Marks between thousands stand before each three digits; elsewhere the number is another than it looks.
    private string? WithoutGroups(string cell, char grouping)
    {
        var text = grouping == ' ' ? cell.Replace('\u00A0', ' ').Replace('\u202F', ' ') : cell;
        if (!text.Contains(grouping, StringComparison.Ordinal))
        {
            return text;
        }

        var whole = text.Split(file.DecimalMark)[0].TrimStart('-', '+').Split(grouping);
        return whole[0].Length is >= 1 and <= 3 && whole.Skip(1).All(group => group.Length == 3) ? text.Replace(grouping.ToString(), string.Empty, StringComparison.Ordinal) : null;
    }

    private static string Order(DateOrder order) => order switch
    {
        DateOrder.DayMonthYear => "day, month, year",
        DateOrder.MonthDayYear => "month, day, year",
        _ => "year, month, day",
    };

    [GeneratedRegex("^[0-9][.,][0-9]+[eE][+]?[0-9]+$", RegexOptions.CultureInvariant, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex Scientific();

    [GeneratedRegex("^(?<a>[0-9]{1,4})[-./](?<b>[0-9]{1,2})[-./](?<c>[0-9]{1,4})$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex DateForm();

    [GeneratedRegex("^(?:(?<date>[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{1,4})(?:T| +))?(?<hour>[0-9]{1,2}):(?<minute>[0-9]{2})(?::(?<second>[0-9]{2})(?:[.,][0-9]+)?)? ?(?<half>[aApP]\\.?[mM]\\.?)?(?<offset>Z|[+-][0-9]{2}:?[0-9]{2})?$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: Timeout.Infinite)]
    private static partial Regex TimeForm();
}

/// <summary>A time as a cell has it.</summary>
/// <param name="Date">Date; null where the cell has none.</param>
/// <param name="Clock">Time of day.</param>
/// <param name="Offset">Offset from UTC; null where the cell has none.</param>
internal sealed record CellTime(DateOnly? Date, TimeSpan Clock, TimeSpan? Offset);
