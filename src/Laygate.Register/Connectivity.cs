using System.Data.Common;
using System.Net.Sockets;
using Microsoft.Data.Sqlite;
using Npgsql;

namespace Laygate.Register;

/// <summary>Tells a database that is away from one that refuses what it was asked.</summary>
internal static class Connectivity
{
    // PostgreSQL, appendix A, error codes: 08 connection (not 08P01: that is a text which it cannot take), 28 who may connect, 3D000 no such
    // database, 53 resources, 57P0x the server stops or starts, 58 the system under it; 40001 and 40P01 ask that the same be tried again.
    private static readonly string[] AwayStates = ["080", "28", "3D000", "53", "57P01", "57P02", "57P03", "57P04", "58", "40001", "40P01"];

    // SQLite, result codes: BUSY, LOCKED, IOERR, FULL, CANTOPEN.
    private static readonly int[] AwayCodes = [5, 6, 10, 13, 14];

    public static bool IsAway(Exception error) => error switch
    {
        PostgresException refused => Array.Exists(AwayStates, state => refused.SqlState.StartsWith(state, StringComparison.Ordinal)),
        SqliteException refused => Array.IndexOf(AwayCodes, refused.SqliteErrorCode) >= 0,
        NpgsqlException lost => lost.IsTransient || (lost.InnerException is { } why && IsLoss(why)),
        SocketException => true,
        DbException or InvalidOperationException or IOException or Microsoft.EntityFrameworkCore.DbUpdateException => error.InnerException is { } inner && IsAway(inner),
        _ => false,
    };

    private static bool IsLoss(Exception error) => error is SocketException or IOException or TimeoutException || IsAway(error);
}
