using System.Globalization;
using Laygate.Model.Plans;
using Laygate.Rules.Results;

namespace Laygate.Reporting.Cards.Roles;

/// <summary>Lines about joints, bond coat and grit, for every crew that works on them.</summary>
internal sealed class SurfaceLines(CardWords card)
{
    private readonly SiteSheet sheet = card.Sheet;
    private readonly CardTexts texts = card.Texts;
    private readonly CardNumbers numbers = card.Numbers;

    /// <summary>Offset, cut and coat of each joint.</summary>
    public IEnumerable<CardLine> Joints() => sheet.Joints.Select(joint => new CardLine(
        $"{(joint.Kind is { } kind ? texts[$"joint.{Words.Of(kind)}"] : card.Show(joint.Id))}{(string.IsNullOrWhiteSpace(joint.Where) ? string.Empty : ", " + card.Own(joint.Where))}",
        string.Join("; ", Parts(joint))));

    /// <summary>Rate and state of each bond coat.</summary>
    public IEnumerable<CardLine> BondCoats() => sheet.BondCoats.Select(coat => new CardLine(texts["bond.below", card.Show(coat.Below)], coat.Applied is false
        ? texts["bond.none", card.Or(coat.Reason)]
        : string.Join("; ", Parts(coat))));

    /// <summary>What grit, how much, until when.</summary>
    public IEnumerable<CardLine> Grit()
    {
        if (sheet.Grit is not { } grit)
        {
            yield break;
        }

        yield return string.Join(", ", new[] { card.Own(grit.Size), grit.Rate.Value is null ? texts["grit.rate.none"] : numbers.Of(grit.Rate) }.Where(part => part is not "—"));
        yield return grit.By.Value is { Number: { } by } ? texts["grit.by", numbers.Local(by.ToString("0.#", CultureInfo.InvariantCulture))] : texts["grit.by.none"];
        if (grit.Lowest.Value is not null)
        {
            yield return texts["grit.lowest", numbers.Of(grit.Lowest)];
        }

        if (sheet.GritWindow.Value is { } window)
        {
            yield return texts["grit.window", numbers.Safe(window, up: false)] + new StopLines(card).Laid(sheet.GritWindow);
        }
    }

    private IEnumerable<string> Parts(SheetJoint joint)
    {
        yield return joint.Offset.Value is not null ? texts["joint.offset", numbers.Of(joint.Offset)] : texts["joint.offset.none"];
        if (joint.Form is { } form)
        {
            yield return texts[$"joint-form.{Words.Of(form)}"] + (joint.Height is { } height ? ", " + texts[$"joint-height.{Words.Of(height)}"] : string.Empty);
        }

        if (joint.Removed.Value is not null)
        {
            yield return texts["joint.removed", numbers.Of(joint.Removed)];
        }

        if (joint.Form is not JointForm.HotEchelon)
        {
            yield return card.Flag(joint.Coated, "joint.coated");
        }
    }

    private IEnumerable<string> Parts(SheetBondCoat coat)
    {
        var binder = coat.Binder is { } known ? texts[$"binder.{Words.Of(known)}"] : texts["none"];
        var rate = numbers.Of(coat.Rate);
        yield return $"{binder}, {rate}{(coat.Basis is { } basis ? " " + texts[$"rate.{Words.Of(basis)}"] : string.Empty)}{(coat.Residue.Value is not null ? $" ({texts["residue", numbers.Of(coat.Residue)]})" : string.Empty)}";
        if (coat.Sprayed is { } sprayed)
        {
            yield return texts["bond.sprayed", numbers.Time(sprayed)];
        }

        if (coat.Binder is not BondBinder.HotBinder)
        {
            yield return texts["bond.break"];
        }

        if (coat.Trafficked is false)
        {
            yield return texts["bond.traffic"];
        }
    }
}
