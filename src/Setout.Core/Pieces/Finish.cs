using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;

namespace Setout.Core.Pieces;

/// <summary>An oil, a varnish, a paint: what it is, how often it goes on, how far it goes and what it goes on.</summary>
/// <param name="Name">The piece's own name for it; also its key.</param>
/// <param name="Product">What to ask for.</param>
/// <param name="Coats">One or more.</param>
/// <param name="Covers">What its can says; null where nobody has read it.</param>
/// <param name="Can">How much is in a can; null where that is not said.</param>
/// <param name="On">Parts, what owns parts, and materials; empty for all that no finish names.</param>
/// <param name="Place">Where it stands.</param>
public sealed record Finish(string Name, Named Product, int Coats, Coverage? Covers, Volume? Can, ImmutableArray<Named> On, Place Place);
