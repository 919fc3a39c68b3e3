using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;
using static Setout.Core.Measures.ExactLength;

namespace Setout.Core.SettingOut;

/// <summary>A face frame while it is set out.</summary>
/// <param name="Described">As described.</param>
/// <param name="Case">The key of its case.</param>
/// <param name="Name">For people.</param>
/// <param name="Stile">The sticks of its stiles.</param>
/// <param name="Rail">The sticks of its rails.</param>
/// <param name="Mullion">The sticks of its mullions.</param>
/// <param name="Tenon">Length of its tenons; null for another joint.</param>
internal sealed record FaceFrameSetting(FaceFrame Described, string Case, string Name, Stick Stile, Stick Rail, Stick Mullion, PartSize? Tenon)
{
    /// <summary>How thick it is.</summary>
    public QuantityKey Thickness => Book.ThicknessOf(Stile.Name);

    /// <summary>Both tenons of a member, as a term.</summary>
    public ImmutableArray<Term> Tenons => Tenon is null ? [] : [Term.From("tenons", 2, Tenon.AsCut)];

    /// <summary>One tenon.</summary>
    public ImmutableArray<Term> OneTenon => Tenon is null ? [] : [Term.From("tenon", 1, Tenon.AsCut)];
}
