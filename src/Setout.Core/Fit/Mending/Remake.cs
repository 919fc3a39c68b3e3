using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Core.Fit.Mending;

/// <summary>
/// Parts that get other figures than they were made to, with all that must follow them. What the plan asks for, once it no longer has to go
/// by the old figure, is the new figure; what was made to fit the old one and falls out by it is made to follow, or the remake fails.
/// </summary>
internal sealed class Remake(Bench bench)
{
    // A part follows another, which follows another: more than this is a new piece rather than a remedy.
    private const int MostTurns = 12;

    private readonly HashSet<(string Part, PartSize Size)> _sizes = [];
    private readonly HashSet<string> _anew = new(StringComparer.Ordinal);
    private readonly Dictionary<QuantityKey, ExactLength> _chosen = [];

    /// <summary>Facts beside the parts that change with them, such as other slides.</summary>
    public ImmutableArray<Amendment> Besides { get; init; } = [];

    /// <summary>The parts, in the order of the piece.</summary>
    public IEnumerable<Part> Parts => bench.Set.Parts.Where(p => Bench.Sizes(p).Any(s => _sizes.Contains((p.Key, s))));

    /// <summary>The sizes of a part that are made anew or taken down.</summary>
    public IEnumerable<PartSize> SizesOf(Part part) => Bench.Sizes(part).Where(s => _sizes.Contains((part.Key, s)));

    /// <summary>True for a part that is cut from new wood.</summary>
    public bool IsAnew(Part part) => _anew.Contains(part.Key);

    /// <summary>Adds a size of a part: of a box that is together the whole box. False when it can no longer be changed.</summary>
    public bool TryAdd(Part part, PartSize size, ExactLength? figure = null)
    {
        if (figure is { } chosen) _chosen[size.ToCut] = chosen;
        if (!bench.IsTogether(part) || !bench.IsFast(part)) return _sizes.Add((part.Key, size));
        if (!Bench.IsOfBox(part)) return false;
        foreach (Part of in bench.Box(part)) AddAnew(of);
        return true;
    }

    /// <summary>
    /// Works the new figures out until nothing more falls out by them; null when the claim does not come true, when what falls out can no longer be
    /// changed, or when there is nothing to do.
    /// </summary>
    public (ImmutableArray<Amendment> Amendments, SetPiece After)? Settle(Func<SetPiece, bool> claim)
    {
        for (int turn = 0; turn < MostTurns; turn++)
        {
            SetPiece planned = bench.Proof.With([.. Besides, .. Forgotten(), .. _chosen.Select(c => new Amendment(c.Key, c.Value, AmendmentKind.CutTo))]);
            if (Parts.Any(p => SizesOf(p).Any(s => !planned.Worked.Values.ContainsKey(s.ToCut) || !bench.Set.Worked.Values.ContainsKey(s.AsCut)))) return null;
            Part[] grown = [.. Parts.Where(p => !IsAnew(p) && SizesOf(p).Any(s => planned.Worked[s.ToCut] > bench.Set.Worked[s.AsCut]))];
            foreach (Part part in grown) AddAnew(part);
            if (grown.Length > 0) continue;
            if (!claim(planned)) return null;
            if (bench.Proof.Fallen(planned).FirstOrDefault() is { Text: not null } fallen)
            {
                if (Follows(planned, fallen)) continue;
                return null;
            }
            if (Besides.IsEmpty && _anew.Count == 0 && Parts.All(p => SizesOf(p).All(s => planned.Worked[s.ToCut] == bench.Set.Worked[s.AsCut]))) return null;
            // What would be trimmed by nothing is not wanted for it.
            if (Parts.Any(p => !IsAnew(p) && SizesOf(p).All(s => planned.Worked[s.ToCut] == bench.Set.Worked[s.AsCut]))) return null;
            ImmutableArray<Amendment> amendments = [.. Besides, .. Forgotten().Where(a => bench.PinOf(a.Key) is not null && !IsFigure(a.Key)), .. from part in Parts from size in SizesOf(part) select new Amendment(size.ToCut, planned.Worked[size.ToCut], AmendmentKind.CutTo)];
            SetPiece after = bench.Proof.With(amendments);
            return bench.Proof.Holds(after, claim) ? (amendments, after) : null;
        }
        return null;
    }

    private void AddAnew(Part part)
    {
        _anew.Add(part.Key);
        foreach (PartSize size in Bench.Sizes(part)) _sizes.Add((part.Key, size));
    }

    /// <summary>
    /// Something made for the old figure follows: the first part of the fallen gap that is not in yet and can be changed. What comes earlier in the work stands: nobody cuts the rails of a frame anew so that
    /// the bottom of a drawer goes into its grooves.
    /// </summary>
    private bool Follows(SetPiece planned, QuantityKey fallen)
    {
        IReadOnlyDictionary<QuantityKey, Rational> reach = new Sensitivity(planned.Worked).Of(fallen);
        Stage from = Parts.Min(p => bench.StageOf(p.Key));
        foreach (Part part in bench.Set.Parts.Where(p => bench.IsMade(p) && bench.StageOf(p.Key) >= from))
            foreach (PartSize size in Bench.Sizes(part).Where(s => Bench.Moves(reach, s.AsCut) && !_sizes.Contains((part.Key, s))))
                if (TryAdd(part, size)) return true;
        return false;
    }

    private bool IsFigure(QuantityKey key) => Parts.Any(p => SizesOf(p).Any(s => s.ToCut == key));

    private IEnumerable<Amendment> Forgotten()
    {
        foreach (Part part in Parts)
        {
            foreach (PartSize size in SizesOf(part))
            {
                yield return new(size.ToCut, ExactLength.Zero, AmendmentKind.Forget);
                yield return new(size.AsCut, ExactLength.Zero, AmendmentKind.Forget);
            }
            // The width of a box tells of its old ends.
            if (part.Role == PartRole.BoxEnd && IsAnew(part)) yield return new(Bench.Built(part), ExactLength.Zero, AmendmentKind.Forget);
        }
    }
}
