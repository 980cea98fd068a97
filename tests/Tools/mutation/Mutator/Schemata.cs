using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace Laygate.Mutation;

/// <summary>Writes all sampled mutants of a file into it, each behind its switch, so that one build holds them all.</summary>
public sealed class Schemata(IEnumerable<Mutant> mutants) : CSharpSyntaxRewriter
{
    /// <summary>The switch that the mutated rooms ask; it goes into the lowest of them.</summary>
    public const string SwitchText = """
        namespace LaygateMutation;
        #nullable enable
        #pragma warning disable
        public static class Mutant
        {
            public static volatile int Active;
            public static volatile bool Recording;
            public static readonly byte[] Hits = new byte[65536];
            public static System.Action<int>? First;

            public static bool On(int id)
            {
                if (Recording && Hits[id] == 0)
                {
                    Hits[id] = 1;
                    First?.Invoke(id);
                }

                return id == Active;
            }
        }
        """;

    private readonly ILookup<SyntaxNode, Mutant> byNode = mutants.ToLookup(mutant => mutant.Node);

    /// <inheritdoc/>
    public override SyntaxNode? Visit(SyntaxNode? node)
    {
        var visited = base.Visit(node);
        if (node is null || visited is null || !byNode.Contains(node))
        {
            return visited;
        }

        foreach (var mutant in byNode[node])
        {
            visited = mutant.Wrap(mutant.Switch, visited.WithoutTrivia());
        }

        return visited.WithTriviaFrom(node);
    }
}
