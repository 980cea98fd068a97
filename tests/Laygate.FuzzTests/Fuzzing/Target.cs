namespace Laygate.FuzzTests.Fuzzing;

/// <summary>What a target made of an input.</summary>
internal enum Answer
{
    /// <summary>It was taken.</summary>
    Accepted,

    /// <summary>It was refused as the documentation says.</summary>
    Refused,
}

/// <summary>One way into the program.</summary>
internal abstract class Target
{
    /// <summary>Its name.</summary>
    public abstract string Name { get; }

    /// <summary>How many of a thousand inputs it gets, nearly.</summary>
    public abstract int Share { get; }

    /// <summary>Sound inputs.</summary>
    public abstract SeedSet Seeds { get; }

    /// <summary>Whether an input holds several documents.</summary>
    public virtual bool IsMany => false;

    /// <summary>The most that one input may allocate on the way, bytes, whatever it holds; null where the work is done by other threads.</summary>
    /// <remarks>Judgement: several times what the largest sound seed needs, so that a file whose work grows faster than its length is found.</remarks>
    public virtual long? MostAllocated => 256L << 20;

    /// <summary>Hands an input to the program and judges what it does.</summary>
    /// <param name="bytes">The input. What else is chosen depends on it alone, so that a file repeats it.</param>
    /// <exception cref="ComplaintException">It does what must never be.</exception>
    public abstract Answer Try(byte[] bytes);

    /// <summary>One of several ways, chosen by the input itself.</summary>
    protected static int Choice(byte[] bytes, int count, int salt = 0)
    {
        var hash = 2166136261u + (uint)salt;
        foreach (var one in bytes)
        {
            hash = (hash ^ one) * 16777619;
        }

        return (int)((hash >> 8) % (uint)count);
    }
}

/// <summary>The program does what must never be.</summary>
internal sealed class ComplaintException(string message) : Exception(message);
