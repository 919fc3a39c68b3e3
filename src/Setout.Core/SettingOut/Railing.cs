using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Core.SettingOut;

/// <summary>What rails go by that divide the bay of a frame.</summary>
/// <param name="Frame">The key of the frame.</param>
/// <param name="Sticks">The sticks of those that name none.</param>
/// <param name="Corner">How they meet the posts.</param>
/// <param name="Tenon">Length of the tenons; null where there are none.</param>
/// <param name="Post">The part that they go into.</param>
/// <param name="PostWidth">How wide that is from the front.</param>
/// <param name="PostDepth">How deep it is from front to back.</param>
/// <param name="BackTakes">What a panel in the back takes, with the wood behind it; null for none.</param>
/// <param name="Deep">From the line of the front to that of the back, or to the panel in the back, as built, as terms.</param>
/// <param name="Y">The line of the front: the outer face of the front posts.</param>
/// <param name="Whole">The outside width and depth of the frame as built.</param>
/// <param name="IsBetweenPosts">True where nothing stands between them and the posts: they go in with the other rails.</param>
internal sealed record Railing(
    string Frame, Named Sticks, FrameCorner Corner, QuantityKey? Tenon, string Post, QuantityKey PostWidth, QuantityKey PostDepth, QuantityKey? BackTakes, ImmutableArray<Term> Deep, ExactLength Y, (ExactLength Wide, ExactLength Deep) Whole, bool IsBetweenPosts);

/// <summary>A rail in front and one at the back, as what lies on them or hangs below them needs to know them.</summary>
/// <param name="Part">Their part.</param>
/// <param name="Name">For people.</param>
/// <param name="High">How high they are as they lie.</param>
/// <param name="Laid">Which way they lie; what goes between them lies alike.</param>
/// <param name="Between">From the rear face of the front one to the front face of the rear one, as terms.</param>
/// <param name="Front">The front face of the front one, from the front of the structure.</param>
/// <param name="Y">Its rear face.</param>
internal sealed record RailPair(string Part, string Name, QuantityKey High, Laid Laid, ImmutableArray<Term> Between, ExactLength Front, ExactLength Y);

/// <summary>Sticks between front and rear post, flush with the faces of the posts that bound a bay.</summary>
/// <param name="Stick">What they are cut from; they stand on edge.</param>
/// <param name="Between">Between front and rear post, as terms.</param>
/// <param name="Post">The part they go between.</param>
/// <param name="Y">The rear face of the front post.</param>
internal sealed record BearerSetting(Stick Stick, ImmutableArray<Term> Between, string Post, ExactLength Y);
