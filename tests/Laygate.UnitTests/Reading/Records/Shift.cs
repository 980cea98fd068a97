using System.Text;
using Laygate.Model.Records;
using Laygate.Reading.Records;
using Laygate.Reading.RuleFiles;

namespace Laygate.UnitTests.Reading.Records;

/// <summary>Records for tests: raw files in memory with their mapping.</summary>
internal static class Shift
{
    /// <summary>Columns of tickets with time, gross, tare and net in t.</summary>
    public const string Tickets = """
            columns:
              - { column: ticket, quantity: ticket }
              - { column: loaded, quantity: loaded }
              - { column: gross, quantity: gross, unit: t }
              - { column: tare, quantity: tare, unit: t }
              - { column: net, quantity: net, unit: t }
              - { column: status, quantity: status }
        """;

    /// <summary>One file of a mapping.</summary>
    public static string File(string name, string holds, string columns, string how = "encoding: utf-8, delimiter: comma, decimal_mark: point, zone: +02:00, day: 2027-05-14")
    {
        var keys = string.Join('\n', how.Split(", ").Select(key => "    " + key));
        return $"  - file: {name}\n    holds: {holds}\n{keys}\n{columns.TrimEnd()}\n";
    }

    /// <summary>Reads a record.</summary>
    public static RecordFile Read(string mapping, params (string Name, string Text)[] files) => ReadBytes(mapping, [.. files.Select(file => (file.Name, Encoding.UTF8.GetBytes(file.Text)))]);

    /// <summary>Reads a record from bytes.</summary>
    public static RecordFile ReadBytes(string mapping, params (string Name, byte[] Bytes)[] files)
    {
        var contents = files.ToDictionary(file => file.Name, file => file.Bytes, StringComparer.Ordinal);
        contents[RecordReader.MappingFile] = Encoding.UTF8.GetBytes($"format: 1\nrecord: {{ plan: small }}\nfiles:\n{mapping}");
        return RecordReader.Read(new RuleFolderInMemory("rec", contents));
    }

    /// <summary>Reads tickets.</summary>
    public static RecordFile ReadTickets(params string[] rows) => Read(File("t.csv", "load-tickets", Tickets), ("t.csv", "ticket,loaded,gross,tare,net,status\n" + string.Join('\n', rows)));

    /// <summary>The record, which must be there.</summary>
    public static ShiftRecord Of(RecordFile file)
    {
        Assert.True(file.Record is not null, string.Join('\n', file.Refused.Select(problem => $"{problem.File}:{problem.Position?.Line}:{problem.Position?.Column} {problem.Message} {problem.Hint}")));
        return file.Record;
    }
}
