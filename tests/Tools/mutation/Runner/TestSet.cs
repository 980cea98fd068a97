using System.Reflection;
using Xunit;
using Xunit.Abstractions;
using Xunit.Sdk;

namespace Laygate.Mutation;

/// <summary>The tests of one assembly, found class by class.</summary>
internal sealed class TestSet(Assembly assembly)
{
    private readonly XunitTestFrameworkDiscoverer discoverer = new(Reflector.Wrap(assembly), new NoSource(), new Silent());

    /// <summary>Classes that may hold tests.</summary>
    public IEnumerable<string> Classes => assembly.GetTypes().Where(type => type is { IsClass: true, IsAbstract: false, IsNested: false }).Select(type => type.FullName!).Order(StringComparer.Ordinal);

    /// <summary>The test cases of a class; data of a theory are made here.</summary>
    public IReadOnlyList<IXunitTestCase> Find(string type)
    {
        using var found = new Found();
        discoverer.Find(type, includeSourceInformation: false, found, new Options());
        found.Ended.WaitOne();
        return found.Cases;
    }

    /// <summary>Runs one case; answers with the first failure, or null.</summary>
    public static string? Run(IXunitTestCase test)
    {
        using var bus = new Failures();
        using var cancel = new CancellationTokenSource();
        var parameters = test.TestMethod.TestClass.Class.ToRuntimeType().GetConstructors().First().GetParameters();
        object[] arguments = [.. parameters.Select(_ => new Unread())];
        var summary = Task.Run(() => test.RunAsync(new Silent(), bus, arguments, new ExceptionAggregator(), cancel)).GetAwaiter().GetResult();
        return summary.Failed > 0 ? bus.First ?? "failed" : null;
    }

    private sealed class Options : ITestFrameworkDiscoveryOptions
    {
        private readonly Dictionary<string, object?> values = new(StringComparer.Ordinal) { ["xunit.discovery.PreEnumerateTheories"] = true };

        public TValue GetValue<TValue>(string name) => values.TryGetValue(name, out var value) ? (TValue)value! : default!;

        public void SetValue<TValue>(string name, TValue value) => values[name] = value;
    }

    private sealed class Silent : LongLivedMarshalByRefObject, IMessageSink
    {
        public bool OnMessage(IMessageSinkMessage message) => true;
    }

    private sealed class Unread : ITestOutputHelper
    {
        public void WriteLine(string message)
        {
        }

        public void WriteLine(string format, params object[] args)
        {
        }
    }

    private sealed class NoSource : LongLivedMarshalByRefObject, ISourceInformationProvider
    {
        public ISourceInformation GetSourceInformation(ITestCase testCase) => new SourceInformation();

        public void Dispose()
        {
        }
    }

    private sealed class Found : LongLivedMarshalByRefObject, IMessageSink, IDisposable
    {
        public List<IXunitTestCase> Cases { get; } = [];

        public ManualResetEvent Ended { get; } = new(initialState: false);

        public bool OnMessage(IMessageSinkMessage message)
        {
            if (message is ITestCaseDiscoveryMessage { TestCase: IXunitTestCase test })
            {
                Cases.Add(test);
            }

            if (message is IDiscoveryCompleteMessage)
            {
                Ended.Set();
            }

            return true;
        }

        public void Dispose() => Ended.Dispose();
    }

    private sealed class Failures : IMessageBus
    {
        public string? First { get; private set; }

        public bool QueueMessage(IMessageSinkMessage message)
        {
            if (message is ITestFailed failed)
            {
                First ??= string.Join(" / ", failed.Messages);
            }

            return true;
        }

        public void Dispose()
        {
        }
    }
}
