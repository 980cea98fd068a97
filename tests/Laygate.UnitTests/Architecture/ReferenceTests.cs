using System.Xml.Linq;

namespace Laygate.UnitTests.Architecture;

/// <summary>No package is pinned and no project is referred to that nobody uses.</summary>
public sealed class ReferenceTests
{
    public static IEnumerable<object[]> ProjectReferences =>
        from project in Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src"), "*.csproj", SearchOption.AllDirectories)
        from reference in XDocument.Load(project).Descendants("ProjectReference")
        where reference.Attribute("ReferenceOutputAssembly") is null
        select new object[] { Path.GetFileNameWithoutExtension(project), Path.GetFileNameWithoutExtension(reference.Attribute("Include")!.Value) };

    [Fact]
    public void Every_pinned_package_is_used_by_a_project()
    {
        string[] names = ["*.csproj", "*.props", "*.targets"];
        var used = names
            .SelectMany(name => Directory.EnumerateFiles(SourceTree.Root, name)
                .Concat(Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src"), name, SearchOption.AllDirectories))
                .Concat(Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "tests"), name, SearchOption.AllDirectories)))
            .SelectMany(file => XDocument.Load(file).Descendants("PackageReference"))
            .Select(reference => reference.Attribute("Include")?.Value);
        var pinned = XDocument.Load(Path.Combine(SourceTree.Root, "Directory.Packages.props")).Descendants("PackageVersion").Select(version => version.Attribute("Include")!.Value);
        Assert.Empty(pinned.Except(used, StringComparer.Ordinal));
    }

    // A using that is not needed does not compile in src, so a file that names the namespace needs the project.
    [Theory]
    [MemberData(nameof(ProjectReferences))]
    public void Every_reference_to_a_project_is_needed(string project, string reference)
    {
        string[] kinds = [".cs", ".razor"];
        Assert.Contains(
            Directory.EnumerateFiles(Path.Combine(SourceTree.Root, "src", project), "*", SearchOption.AllDirectories),
            file => kinds.Contains(Path.GetExtension(file), StringComparer.Ordinal) && File.ReadAllText(file).Contains($"{reference}.", StringComparison.Ordinal));
    }
}
