using System.Collections.Immutable;
using Setout.Core.Materials;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>How what divides a space meets what carries it.</summary>
/// <param name="Choice">The joint.</param>
/// <param name="Depth">How far it goes in at each end; null where it only meets.</param>
internal sealed record DividerFit(JointChoice Choice, PartSize? Depth)
{
    /// <summary>Butted.</summary>
    public static DividerFit Butt { get; } = new(JointChoice.Butt, null);

    /// <summary>How far it goes in at one end, as a term; nothing where it only meets.</summary>
    public ImmutableArray<Term> AtOneEnd => Depth is null ? [] : [Term.From("into its dado", 1, Depth.AsCut)];

    /// <summary>How far it goes in at both ends.</summary>
    public ImmutableArray<Term> AtBothEnds => Depth is null ? [] : [Term.From("into its dadoes", 2, Depth.AsCut)];

    /// <summary>True between the slide panels of a frame, which stands already: it is slid in from the front.</summary>
    public bool IsSlidIn { get; init; }

    /// <summary>True where it goes in before the case is closed: into dadoes, or onto dowels.</summary>
    public bool IsClosedIn => Choice.Joint is CaseJoint.Dado or CaseJoint.Dowels && !IsSlidIn;

    /// <summary>When it comes in.</summary>
    public Stage Stage => IsClosedIn ? Stage.Carcase : Stage.Inside;
}
