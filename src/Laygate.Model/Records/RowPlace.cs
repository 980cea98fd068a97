namespace Laygate.Model.Records;

/// <summary>Where a row of a record stands.</summary>
/// <param name="File">Name of the file in the folder of the record.</param>
/// <param name="Line">Line of the file, from 1.</param>
public readonly record struct RowPlace(string File, int Line);

/// <summary>A raw file of a record. It is read and never changed.</summary>
/// <param name="File">Name of the file in the folder of the record.</param>
/// <param name="Holds">What its rows are, in the word of the mapping.</param>
/// <param name="Hash">SHA-256 of its bytes, hexadecimal.</param>
/// <param name="Rows">Rows that were read.</param>
/// <param name="Refused">Rows that were refused.</param>
public sealed record RawFile(string File, string Holds, string Hash, int Rows, int Refused);
