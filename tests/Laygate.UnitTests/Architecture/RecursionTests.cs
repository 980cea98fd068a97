using System.Reflection;
using System.Reflection.Emit;

namespace Laygate.UnitTests.Architecture;

/// <summary>
/// Names every method that may call itself, directly or through others of its room, with what bounds its depth. A stack that
/// overflows kills the process, so a new one needs a bound that no input can pass, or a loop. Calls through interfaces and
/// delegates are not seen here: the chains of quantities are held by <c>ChainDepthTests</c>, the whole way by <c>StackNeedTests</c>.
/// </summary>
public sealed class RecursionTests
{
    /// <summary>Depth of a document, aliases expanded; refused beyond it by the reader.</summary>
    private const string Document = "64, the depth that is read";

    /// <summary>Depth of a schema of ours.</summary>
    private const string Schema = "the schemas that are shipped";

    private static readonly Dictionary<string, string> Known = new(StringComparer.Ordinal)
    {
        ["QuantityContext"] = "the longest chain of formulas",
        ["AssumptionBand"] = "one level: a variant of a context makes no variants",
        ["HaulEngine"] = "one level: a truck that is called stands at its loading place, which calls nobody",
        ["PavingSite"] = "one level: a truck that is called stands at its loading place, which calls nobody",
        ["Blanks"] = Document,
        ["InputList"] = Document,
        ["OldWords"] = Document,
        ["PlanEdit"] = Document,
        ["PlanPositions"] = Document,
        ["PlanTextChanges"] = Document,
        ["TokenNames"] = Document,
        ["SchemaChecker"] = Document,
        ["SchemaWalker"] = Document + ", and " + Schema,
        ["KeyPlaces"] = Schema,
        ["Needs"] = Schema,
        ["ShapeCheck"] = "the shape of a report",
        ["SchemaNode"] = Schema,
        ["SchemaNodeReader"] = Schema,
        ["SchemaTree"] = Schema,
        ["ValidatorModel"] = Schema,
        ["StatedInputs"] = "the longest chain of formulas",
    };

    private static readonly Dictionary<short, OpCode> Codes = typeof(OpCodes).GetFields().Select(field => (OpCode)field.GetValue(null)!).ToDictionary(code => code.Value);

    [Theory]
    [InlineData("Laygate.Model")]
    [InlineData("Laygate.Engineering")]
    [InlineData("Laygate.Rules")]
    [InlineData("Laygate.Reading")]
    [InlineData("Laygate.Checking")]
    [InlineData("Laygate.Reporting")]
    public void Every_recursion_is_known(string room) =>
        Assert.Empty(Recursive(Assembly.Load(room)).Select(Owner).Distinct(StringComparer.Ordinal).Where(owner => !Known.ContainsKey(owner)).Order(StringComparer.Ordinal));

    [Fact]
    public void Nothing_is_known_that_no_longer_recurs()
    {
        var found = new[] { "Laygate.Engineering", "Laygate.Reading", "Laygate.Checking" }.SelectMany(room => Recursive(Assembly.Load(room))).Select(Owner).ToHashSet(StringComparer.Ordinal);
        Assert.Empty(Known.Keys.Except(found, StringComparer.Ordinal));
    }

    // Closures and state machines count for the type that holds them.
    private static string Owner(MethodBase method)
    {
        var type = method.DeclaringType!;
        while (type.Name.Contains('<', StringComparison.Ordinal) && type.DeclaringType is { } outer)
        {
            type = outer;
        }

        return type.Name;
    }

    private static IReadOnlyList<MethodBase> Recursive(Assembly room)
    {
        var calls = room.GetTypes().Where(type => type.Namespace?.StartsWith("Laygate", StringComparison.Ordinal) == true)
            .SelectMany(type => type.GetMembers(BindingFlags.Instance | BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.DeclaredOnly).OfType<MethodBase>())
            .Where(method => method.GetMethodBody() is not null && !IsOfRecord(method))
            .ToDictionary(method => method, method => Called(method).ToHashSet());
        // What calls nothing that is left, or is called by nothing that is left, is on no circle.
        for (var before = -1; before != calls.Count;)
        {
            before = calls.Count;
            var called = calls.Values.SelectMany(targets => targets).ToHashSet();
            foreach (var method in calls.Keys.Where(method => !called.Contains(method) || !calls[method].Overlaps(calls.Keys)).ToList())
            {
                calls.Remove(method);
            }
        }

        return [.. calls.Keys.Where(method => Reaches(method, calls))];
    }

    private static bool Reaches(MethodBase start, Dictionary<MethodBase, HashSet<MethodBase>> calls)
    {
        var seen = new HashSet<MethodBase>();
        var open = new Stack<MethodBase>([start]);
        while (open.TryPop(out var method))
        {
            foreach (var next in calls.GetValueOrDefault(method) ?? [])
            {
                if (next == start)
                {
                    return true;
                }

                if (seen.Add(next))
                {
                    open.Push(next);
                }
            }
        }

        return false;
    }

    // Equality, hash and text of records go through the properties; RecordTextTests holds that they end.
    private static bool IsOfRecord(MethodBase method) => method.Name is "Equals" or "GetHashCode" or "PrintMembers" or "ToString" or "op_Equality" or "op_Inequality";

    private static IEnumerable<MethodBase> Called(MethodBase method)
    {
        var il = method.GetMethodBody()!.GetILAsByteArray()!;
        for (var at = 0; at < il.Length;)
        {
            var code = Codes[il[at] == 0xFE ? (short)(0xFE00 | il[at + 1]) : il[at]];
            at += code.Size;
            if (code.OperandType is OperandType.InlineMethod)
            {
                foreach (var called in Targets(method, BitConverter.ToInt32(il, at)))
                {
                    yield return called;
                }
            }

            at += code.OperandType switch
            {
                OperandType.InlineNone => 0,
                OperandType.ShortInlineBrTarget or OperandType.ShortInlineI or OperandType.ShortInlineVar => 1,
                OperandType.InlineVar => 2,
                OperandType.InlineI8 or OperandType.InlineR => 8,
                OperandType.InlineSwitch => 4 + (4 * BitConverter.ToInt32(il, at)),
                _ => 4,
            };
        }
    }

    private static IEnumerable<MethodBase> Targets(MethodBase from, int token)
    {
        var called = from.Module.ResolveMethod(token, from.DeclaringType!.IsGenericType ? from.DeclaringType.GetGenericArguments() : null, from.IsGenericMethod ? from.GetGenericArguments() : null);
        if (called?.DeclaringType is not { } type || type.Assembly != from.Module.Assembly)
        {
            yield break;
        }

        var open = type.IsGenericType ? type.GetGenericTypeDefinition() : type;
        var method = called is MethodInfo { IsGenericMethod: true } generic ? generic.GetGenericMethodDefinition() : called;
        yield return MethodBase.GetMethodFromHandle(method.MethodHandle, open.TypeHandle)!;
        // An iterator or asynchronous method runs in the state machine that it makes.
        if (called.IsConstructor && type.Name.Contains('<', StringComparison.Ordinal) && open.GetMethod("MoveNext", BindingFlags.Instance | BindingFlags.NonPublic) is { } next)
        {
            yield return next;
        }
    }
}
