namespace System.Runtime.CompilerServices;

/// <summary>Lets records be used: the platform that compilers load has not this type yet.</summary>
internal static class IsExternalInit;
