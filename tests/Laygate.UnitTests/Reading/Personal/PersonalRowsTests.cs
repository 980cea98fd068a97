using System.Text;
using Laygate.Reading.Personal;

namespace Laygate.UnitTests.Reading.Personal;

/// <summary>Names of persons in the rows of a record are found wherever their column stands. Rows are invented.</summary>
public sealed class PersonalRowsTests
{
    private const string Mapping = """
        format: 1
        record: { plan: small }
        files:
          - file: hold.csv
            holds: hold-points
            encoding: utf-8
            delimiter: comma
            decimal_mark: point
            zone: +02:00
            day: 2027-05-14
            columns:
              - { column: who, quantity: by }
              - { column: point, quantity: hold_point }
              - { column: at, quantity: at }
        """;

    [Theory]
    [InlineData("who,point,at\nA. Lind,base,20:45\nB. Roe,edge,20:50\n")]
    [InlineData("point,at,who\nbase,20:45,A. Lind\nedge,20:50,B. Roe\n")]
    [InlineData("point,who,at\r\nbase,\"A. Lind\",20:45\r\nedge,  B. Roe ,20:50\r\n")]
    public void Each_name_is_found_at_its_place_and_nothing_else(string rows)
    {
        var found = Assert.Single(PersonalRows.Find(Files(rows))).Value;
        Assert.Equal(["A. Lind", "B. Roe"], found.Places.Select(place => rows[place.Start..place.End]), StringComparer.Ordinal);
        Assert.All(found.Places, place => Assert.Equal(PersonalSort.Who, place.Sort));
    }

    [Fact]
    public void A_name_in_the_header_or_an_empty_cell_is_none() =>
        Assert.Empty(Assert.Single(PersonalRows.Find(Files("who,point,at\n,base,20:45\n"))).Value.Places);

    private static Dictionary<string, byte[]> Files(string rows) => new(StringComparer.Ordinal)
    {
        ["record.yaml"] = Encoding.UTF8.GetBytes(Mapping),
        ["hold.csv"] = Encoding.UTF8.GetBytes(rows),
    };
}
