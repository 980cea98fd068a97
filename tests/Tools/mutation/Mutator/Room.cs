using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;
using Microsoft.CodeAnalysis.Text;

namespace Laygate.Mutation;

/// <summary>The source of one project and what the compiler makes of it.</summary>
public sealed class Room
{
    private static readonly CSharpParseOptions Parsing = new(LanguageVersion.Preview);

    private readonly string folder;
    private HashSet<int> constants = [];

    private Room(string name, string folder, CSharpCompilation compilation)
    {
        (Name, this.folder, Compilation) = (name, folder, compilation);
    }

    /// <summary>Such as "Engineering".</summary>
    public string Name { get; }

    /// <summary>As the compiler sees it.</summary>
    public CSharpCompilation Compilation { get; private set; }

    /// <summary>Reads a room of the tree at <paramref name="root"/>.</summary>
    public static Room Read(string root, string name, IEnumerable<MetadataReference> references)
    {
        var source = Path.Combine(root, "src", $"Laygate.{name}");
        // What the build and its generators write: usings, who may see internals, bodies of partial methods.
        var written = Directory.EnumerateFiles(Path.Combine(root, "artifacts", "obj", $"Laygate.{name}", "debug"), "*.cs", SearchOption.AllDirectories);
        var trees = Directory.EnumerateFiles(source, "*.cs", SearchOption.AllDirectories).Concat(written).Order(StringComparer.Ordinal).Select(Parse);
        var options = new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable);
        return new Room(name, source, CSharpCompilation.Create($"Laygate.{name}", trees, references, options));
    }

    /// <summary>All mutants, with the folder that each lies in.</summary>
    public IEnumerable<(string Folder, Mutant Mutant)> Mutants() => Compilation.SyntaxTrees.Where(IsOwn).SelectMany(tree =>
    {
        var types = Compilation.GetSemanticModel(tree);
        return Places.In(tree.GetRoot(), types).Select(mutant => ($"{Name}/{FolderOf(tree)}", mutant));
    });

    /// <summary>Writes mutants into the room; answers with the numbers of those that the compiler does not take, which are left out again.</summary>
    public IReadOnlySet<int> Write(IReadOnlyList<Mutant> mutants)
    {
        var clean = Compilation;
        constants = [.. mutants.Where(mutant => mutant.Node is FieldDeclarationSyntax).Select(mutant => mutant.Id)];
        // An error that is there without a mutant would hide those that are found later, in the bodies of methods.
        if (Errors(clean).FirstOrDefault() is { } wrong)
        {
            throw new InvalidOperationException($"The room does not build before anything is changed: {wrong}");
        }

        var refused = new HashSet<int>();
        while (true)
        {
            var taken = mutants.Where(mutant => !refused.Contains(mutant.Id)).ToLookup(mutant => mutant.Node.SyntaxTree);
            Compilation = clean;
            foreach (var file in taken)
            {
                var text = new Schemata(file).Visit(file.Key.GetRoot())!.ToFullString();
                Compilation = Compilation.ReplaceSyntaxTree(file.Key, CSharpSyntaxTree.ParseText(text, Parsing, file.Key.FilePath));
            }

            var before = refused.Count;
            refused.UnionWith(Errors(Compilation).SelectMany(SwitchesAt));
            if (refused.Count == before)
            {
                return refused;
            }
        }
    }

    /// <summary>Writes the files as they stand now.</summary>
    public void Save()
    {
        foreach (var tree in Compilation.SyntaxTrees.Where(IsOwn))
        {
            File.WriteAllText(tree.FilePath, tree.ToString());
        }
    }

    /// <summary>Path of a place from the room.</summary>
    public string PathOf(SyntaxNode node) => Path.GetRelativePath(folder, node.SyntaxTree.FilePath).Replace('\\', '/');

    private static SyntaxTree Parse(string path) => CSharpSyntaxTree.ParseText(SourceText.From(File.ReadAllText(path)), Parsing, path);

    private static IEnumerable<Diagnostic> Errors(CSharpCompilation compilation) =>
        compilation.GetDiagnostics().Where(found => found.Severity == DiagnosticSeverity.Error);

    /// <summary>The switches in the smallest piece around an error that has any.</summary>
    private IEnumerable<int> SwitchesAt(Diagnostic error)
    {
        var node = error.Location.SourceTree!.GetRoot().FindNode(error.Location.SourceSpan, getInnermostNodeForTie: true);
        var named = NamedSwitches(node, Compilation.GetSemanticModel(error.Location.SourceTree!)).ToList();
        if (named.Count > 0)
        {
            return named;
        }

        var found = node.AncestorsAndSelf().Select(Switches).FirstOrDefault(switches => switches.Count > 0);
        return found ?? throw new InvalidOperationException($"The room does not build: {error}");
    }

    /// <summary>The switches of constants that are named where something must be known to the compiler.</summary>
    private IEnumerable<int> NamedSwitches(SyntaxNode node, SemanticModel types) =>
        node.DescendantNodesAndSelf().OfType<IdentifierNameSyntax>()
            .Select(name => types.GetSymbolInfo(name))
            .Select(info => info.Symbol ?? info.CandidateSymbols.FirstOrDefault())
            .OfType<IPropertySymbol>()
            .SelectMany(property => property.DeclaringSyntaxReferences)
            .SelectMany(declaration => Switches(declaration.GetSyntax()))
            .Where(id => constants.Contains(id));

    private static List<int> Switches(SyntaxNode node) =>
    [
        .. node.DescendantNodesAndSelf().OfType<InvocationExpressionSyntax>()
            .Where(call => call.Expression.ToString() == "global::LaygateMutation.Mutant.On")
            .Select(call => int.Parse(call.ArgumentList.Arguments[0].ToString(), System.Globalization.CultureInfo.InvariantCulture)),
    ];

    // What a source generator wrote is compiled along, but neither changed nor written.
    private bool IsOwn(SyntaxTree tree) => tree.FilePath.StartsWith(folder + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private string FolderOf(SyntaxTree tree)
    {
        var path = Path.GetRelativePath(folder, tree.FilePath).Replace('\\', '/').Split('/');
        return path.Length == 1 ? "." : path[0];
    }
}
