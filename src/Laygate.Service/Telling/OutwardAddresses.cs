using System.Net;
using System.Net.Sockets;

namespace Laygate.Service.Telling;

/// <summary>The receiver of a webhook lies where the settings do not let it lie.</summary>
internal sealed class ForbiddenAddressException() : IOException("The address is not one of the public Internet.");

/// <summary>
/// Tells addresses of the public Internet from all others, after IANA's registries of special-purpose addresses for IPv4 and IPv6 (RFC 6890 and what has updated it).
/// Whoever sets a webhook must not reach through this service what only this service can reach.
/// </summary>
internal static class OutwardAddresses
{
    // "Globally reachable" is false in the registry, or what is reached depends on where one stands; multicast and reserved besides.
    private static readonly IPNetwork[] NotPublic =
    [
        .. new[]
        {
            "0.0.0.0/8", "10.0.0.0/8", "100.64.0.0/10", "127.0.0.0/8", "169.254.0.0/16", "172.16.0.0/12", "192.0.0.0/24", "192.0.2.0/24", "192.88.99.0/24", "192.168.0.0/16",
            "198.18.0.0/15", "198.51.100.0/24", "203.0.113.0/24", "224.0.0.0/4", "240.0.0.0/4",
            "2001::/23", "2001:db8::/32", "2002::/16", "3fff::/20",
        }.Select(IPNetwork.Parse),
    ];

    // Of IPv6 only these are given out to the Internet (IANA, Internet Protocol Version 6 Address Space).
    private static readonly IPNetwork GlobalUnicast = IPNetwork.Parse("2000::/3");

    /// <summary>Whether an address is one of the public Internet.</summary>
    public static bool IsPublic(IPAddress address)
    {
        var known = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        return (known.AddressFamily == AddressFamily.InterNetwork || GlobalUnicast.Contains(known)) && !NotPublic.Any(network => network.BaseAddress.AddressFamily == known.AddressFamily && network.Contains(known));
    }

    /// <summary>Connects to one of the addresses of a host. They are judged here, where they are used: a name may lead elsewhere by now than when it was checked.</summary>
    /// <param name="endPoint">Host and port.</param>
    /// <param name="anyAddress">Whether addresses that are not public are allowed, too.</param>
    /// <param name="cancel">Ends it.</param>
    /// <exception cref="ForbiddenAddressException">The host has none that is allowed.</exception>
    public static async ValueTask<Stream> ConnectAsync(DnsEndPoint endPoint, bool anyAddress, CancellationToken cancel)
    {
        var addresses = (await Dns.GetHostAddressesAsync(endPoint.Host, cancel)).Where(address => anyAddress || IsPublic(address)).ToArray();
        if (addresses.Length == 0)
        {
            throw new ForbiddenAddressException();
        }

        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(addresses, endPoint.Port, cancel);
            return new NetworkStream(socket, ownsSocket: true);
        }
        catch
        {
            socket.Dispose();
            throw;
        }
    }
}
