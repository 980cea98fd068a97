using Laygate.Engineering.Cooling;
using Laygate.Reading.Yaml;
using Laygate.Rules.Results;

namespace Laygate.Checking.Verification;

/// <summary>A place of a table of expected values.</summary>
internal sealed record CasePlace(CoolingPlace Place, VerifiedPlace Shown, string? Layer = null, string? Depth = null);

/// <summary>Reads the places of a table of expected values.</summary>
internal sealed class PlaceMapper(CaseFields fields, ConductionQuestion question, VerifiedKind kind)
{
    public IReadOnlyList<CasePlace> Map()
    {
        var isNeeded = kind != VerifiedKind.HeatBalanceGap;
        if (isNeeded != (fields["places"] is not null))
        {
            fields.Problems.Add(isNeeded
                ? new ReadingProblem("The table needs places.", fields.Span, "Add `places`, such as `places: [skin]`.")
                : new ReadingProblem("The heat balance is of the whole stack; it has no places.", fields["places"]!.Span, "Remove `places`."));
            return [];
        }

        return isNeeded ? [.. fields.Items("places").Select(Place)] : [new CasePlace(default, VerifiedPlace.None)];
    }

    private static CasePlace Whole(string word) => word switch
    {
        "core" => new(CoolingPlace.Core, VerifiedPlace.Core),
        "core-skin-difference" => new(CoolingPlace.CoreSkinDifference, VerifiedPlace.CoreSkinDifference),
        "hot-body-mean" => new(new CoolingPlace(CoolingPlaceKind.HotBodyMean), VerifiedPlace.HotBodyMean),
        _ => new(CoolingPlace.Skin, VerifiedPlace.Skin),
    };

    private CasePlace Place(YamlToken token)
    {
        var place = token is MapToken map ? Within(new CaseFields(map, fields.Problems)) : Whole(((ScalarToken)token).Text);
        if (kind == VerifiedKind.Flux && place.Shown != VerifiedPlace.Bottom)
        {
            fields.Problems.Add(new ReadingProblem("A flux is taken at the lower face of a layer.", TokenNames.Head(token).Span, "Write `bottom` and the id of the layer."));
        }

        return place;
    }

    private CasePlace Within(CaseFields place)
    {
        if (place.NotOne("A place") is { } wrong)
        {
            fields.Problems.Add(wrong);
            return Whole("skin");
        }

        var (key, value) = (place.Map.Entries[0].Key.Text, (ScalarToken)place.Map.Entries[0].Value);
        if (key is "depth")
        {
            return new(CoolingPlace.Depth(place.Required("depth", CaseDimension.Length)), VerifiedPlace.Depth, null, value.Text);
        }

        var layer = question.Layers.Select(one => one.Id).ToList().IndexOf(value.Text);
        if (layer < 0)
        {
            fields.Problems.Add(ConductionMapper.Unknown("layer", value, question.Layers.Select(one => one.Id)));
        }

        return key switch
        {
            "mean" => new(CoolingPlace.Mean(layer), VerifiedPlace.Mean, value.Text),
            "middle" => new(CoolingPlace.MidDepth(layer), VerifiedPlace.Middle, value.Text),
            "top" => new(CoolingPlace.TopFace(layer), VerifiedPlace.Top, value.Text),
            _ => new(CoolingPlace.BottomFace(layer), VerifiedPlace.Bottom, value.Text),
        };
    }
}
