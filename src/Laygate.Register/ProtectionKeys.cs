using Laygate.Register.Storage;
using Microsoft.EntityFrameworkCore;

namespace Laygate.Register;

/// <summary>Keys with which replicas protect what a browser carries while it signs in at a provider. The platform makes them and asks for them without waiting.</summary>
public sealed class ProtectionKeys(RegisterDatabase database)
{
    /// <summary>All keys, as the platform wrote them.</summary>
    public IReadOnlyList<string> List()
    {
        using var context = database.Open();
        return [.. context.ProtectionKeys.AsNoTracking().OrderBy(row => row.Entry).Select(row => row.Xml)];
    }

    /// <summary>Keeps one more.</summary>
    /// <param name="name">Name by which the platform knows it.</param>
    /// <param name="xml">The key, as the platform writes it.</param>
    public void Add(string name, string xml)
    {
        using var context = database.Open();
        context.ProtectionKeys.Add(new ProtectionKeyRow { Name = name, Xml = xml });
        context.SaveChanges();
    }
}
