using System.Reflection;
using Laygate.Register;
using Laygate.ServiceTests.Shared;

namespace Laygate.ServiceTests;

public sealed class ArchitectureTests
{
    [Fact]
    public void The_register_knows_neither_HTTP_nor_any_other_room()
    {
        var references = typeof(RegisterDatabase).Assembly.GetReferencedAssemblies().Select(name => name.Name!).ToList();
        Assert.DoesNotContain(references, name => name.StartsWith("Laygate.", StringComparison.Ordinal) || name.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal) || name.StartsWith("System.Net.Http", StringComparison.Ordinal));
    }

    [Fact]
    public void The_service_reaches_the_database_only_through_the_register()
    {
        var references = Assembly.LoadFrom(ServiceProcess.Library).GetReferencedAssemblies().Select(name => name.Name!);
        Assert.DoesNotContain(references, name => name.Contains("EntityFramework", StringComparison.Ordinal) || name.Contains("Sqlite", StringComparison.Ordinal) || name.Contains("Npgsql", StringComparison.Ordinal));
    }

    // Reporting renders pages with Components, which is a library without a server; these are what it brings along.
    private static readonly string[] Renderer = ["Microsoft.AspNetCore.Components", "Microsoft.AspNetCore.Components.Analyzers", "Microsoft.AspNetCore.Components.Forms", "Microsoft.AspNetCore.Components.Web", "Microsoft.AspNetCore.Authorization", "Microsoft.AspNetCore.Metadata"];

    [Theory]
    [InlineData("Laygate.Cli")]
    [InlineData("Laygate.Reading")]
    [InlineData("Laygate.Checking")]
    [InlineData("Laygate.Reporting")]
    [InlineData("Laygate.Rules")]
    public void No_other_room_brings_the_database_or_the_web_along(string room)
    {
        var locked = File.ReadAllText(Path.Combine(SourceTree.Root, "src", room, "packages.lock.json"));
        locked = Renderer.Aggregate(locked, (text, package) => text.Replace($"\"{package}\"", string.Empty, StringComparison.Ordinal));
        foreach (var word in new[] { "EntityFramework", "Sqlite", "Npgsql", "Serilog", "AspNetCore", "laygate.register", "laygate.service" })
        {
            Assert.DoesNotContain(word, locked, StringComparison.OrdinalIgnoreCase);
        }
    }
}
