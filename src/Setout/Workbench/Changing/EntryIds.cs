using System.Security.Cryptography;
using System.Text;

namespace Setout.Workbench.Changing;

/// <summary>Ids of entries of logs that forms make.</summary>
internal static class EntryIds
{
    /// <summary>The id of an entry that a form makes, eight hexadecimal digits: the same however often it is sent.</summary>
    /// <param name="change">The id of the form.</param>
    /// <param name="at">Which of its entries, from 0.</param>
    public static string Of(string change, int at = 0) => "e" + Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"entry {at} {change}")))[..8];
}
