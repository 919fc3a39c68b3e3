using System.Collections.Immutable;
using Setout.Commands;
using Setout.Core.Workings;
using Setout.Shop.Plans;

namespace Setout.Files;

/// <summary>Several pieces that are broken down together: they stand in one folder, or are kept in one workbench, and share its shop.</summary>
/// <param name="Each">Their texts, in the order named; one or more.</param>
internal sealed record SeveralPieces(ImmutableArray<PieceFiles> Each)
{
    /// <summary>Finds the texts of each.</summary>
    /// <param name="pieces">Paths of piece files; one or more.</param>
    /// <param name="shop">The shop file named; null for the one beside them.</param>
    /// <param name="data">The data folder named; null for the usual one.</param>
    /// <exception cref="UsageException">One is missing, or they stand in more than one folder.</exception>
    public static SeveralPieces Of(IEnumerable<string> pieces, string? shop, string? data = null) => Of([.. pieces.Select(p => PieceFiles.Of(p, shop, data))]);

    private static SeveralPieces Of(ImmutableArray<PieceFiles> pieces)
    {
        var several = new SeveralPieces(pieces);
        if (several.Each.Select(f => f.Place).Distinct(StringComparer.Ordinal).Count() > 1)
            throw new UsageException("The pieces stand in more than one folder.", "Pieces that are broken down together stand in one folder, so that one shop and one rack holds for all.");
        return several;
    }

    /// <summary>Those of a printed plan, beside one of them.</summary>
    /// <exception cref="UsageException">That one is not of the plan, or another of them is missing.</exception>
    public static SeveralPieces Beside(PieceFiles one, ImmutableArray<string> names, string? shop)
    {
        if (!names.Contains(one.FileName)) throw new UsageException($"The plan is of {string.Join(" and ", names)} together, not of {one.FileName}.", $"Name one of these: {one.Beside(names[0])}.");
        // A name out of a file is a name and no path.
        if (names.FirstOrDefault(n => n != Path.GetFileName(n)) is { } path) throw new UsageException($"'{path}' in the plan is no file name.", "Make the plan anew.");
        return Of([.. names.Select(n => one.Other(n, shop))]);
    }

    /// <summary>How findings name them.</summary>
    public string Names => string.Join(" + ", Each.Select(f => f.Piece));

    /// <summary>When the newest of the texts was last changed.</summary>
    public string Stand() => Each.MaxBy(f => f.ChangedAt)!.Stand();

    /// <summary>Reads all; one piece as it is, several as one. Tells what is wrong with its place and gives null when they cannot be used.</summary>
    public PieceSource? Read(Terminal terminal)
    {
        PieceSource?[] read = [.. Each.Select(f => Told.Source(terminal, f))];
        if (read.Any(r => r is null)) return null;
        if (read is [{ } only]) return only;
        bool isStopped = false;
        foreach ((PieceFiles files, PieceSource source) in Each.Zip(read.OfType<PieceSource>()))
        {
            foreach (Finding stop in source.SetOut().Findings.Where(f => f.Severity == Severity.Stop))
            {
                Told.Finding(terminal.Error, files.Piece, stop);
                isStopped = true;
            }
        }
        if (isStopped) return null;
        (PieceSource? together, Finding? refusal) = PiecesTogether.Of(Each.Zip(read).Select(p => (p.First.FileName, p.Second!)));
        if (refusal is not null) Told.Finding(terminal.Error, Names, refusal);
        return together;
    }
}
