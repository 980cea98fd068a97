namespace Laygate.Model.Plans;

/// <summary>A key of a group in which every key is answered yes or no.</summary>
/// <param name="Key">The key as plans write it.</param>
/// <param name="Meaning">What holds when it is yes.</param>
/// <param name="Read">What a plan states; null where it says nothing.</param>
/// <typeparam name="T">The group.</typeparam>
public sealed record FlagKey<T>(string Key, string Meaning, Func<T, bool?> Read);
