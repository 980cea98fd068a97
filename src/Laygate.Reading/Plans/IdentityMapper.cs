using Laygate.Model.Plans;

namespace Laygate.Reading.Plans;

/// <summary>Maps who and what a plan is.</summary>
internal static class IdentityMapper
{
    public static Identity Identity(Fields at) => new()
    {
        Id = at.RequiredId("id"),
        Stage = at.RequiredWord<Stage>("stage"),
        Title = at.Text("title"),
        Revision = at.Text("revision"),
        Date = at.Date("date"),
        Supersedes = at.Text("supersedes"),
        Contract = at.Text("contract"),
        Client = at.Text("client"),
        Contractor = at.Text("contractor"),
        Language = at.Text("language"),
        Prepared = at.Block("prepared", Signature),
        Checked = at.Block("checked", Signature),
        Approved = at.Block("approved", Signature),
        People = at.List("people", Person),
    };

    public static Document Document(Fields at) => new(
        Id: at.RequiredId("id"),
        Kind: at.Word<DocumentKind>("kind"),
        Title: at.Text("title"),
        Edition: at.Text("edition"))
    {
        ValidFrom = at.Date("valid_from"),
        ValidTo = at.Date("valid_to"),
        SeenInForce = at.Date("seen_in_force"),
    };

    private static Signature Signature(Fields at) => new(
        Name: at.Text("name"),
        Role: at.Text("role"),
        Date: at.Date("date"));

    private static Person Person(Fields at) => new(
        Id: at.RequiredId("id"),
        Role: at.Text("role"),
        Name: at.Text("name"),
        Call: at.Text("call"),
        Deputy: at.Text("deputy"));
}
