using System.Collections.Immutable;
using Setout.Shop.Texts;

namespace Setout.Shop.Facts;

/// <summary>
/// Where the facts of one piece are kept: a log beside its file, or a place in a database. Facts are appended; there is no changing and no
/// taking out. Every store keeps these promises:
/// <list type="bullet">
/// <item>Order: entries are read in the order in which they were appended; those of one call stand together, in the order given.</item>
/// <item>Exactness: an entry reads back as itself; its lengths are the same fractions, not near ones.</item>
/// <item>Durability: when <see cref="Append"/> returns, what it was given has been handed to the disk and outlives a loss of power.</item>
/// <item>All or nothing: when <see cref="Append"/> throws, nothing of what it was given is there. When its program or the power ends in the middle,
/// a database holds all of it or nothing. A log that is a text can keep the beginning of that one write: its whole entries count, and a torn one is told
/// when the log is read; what was acknowledged before stands.</item>
/// <item>Once: an entry that is there already changes nothing, so a call may be repeated when its answer was lost.</item>
/// <item>Several writers, in this program or in others, wait for each other; none overwrites what another has been told is there.</item>
/// <item>A reader sees what had been appended when it began, in whole calls.</item>
/// </list>
/// </summary>
public interface IFactStore
{
    /// <summary>All facts, in the order in which they were appended; none when nothing was ever appended.</summary>
    /// <exception cref="FactStoreException">What is kept cannot be read.</exception>
    Log Read();

    /// <summary>Appends entries; those that are there already are passed over.</summary>
    /// <param name="entries">In the order in which they are to stand.</param>
    /// <returns>How many were new: 0 when all were there.</returns>
    /// <exception cref="FactStoreException">An id is taken by an entry that says something else (<see cref="FactStoreException.IsConflict"/>), an entry cannot be
    /// written, or the store cannot be used. Nothing was appended.</exception>
    int Append(params ImmutableArray<LogEntry> entries);
}
