namespace Setout.Core.Pieces;

/// <summary>Walks what openings hold.</summary>
public static class OpeningContents
{
    /// <summary>A content and all that stands in it, to any depth, behind doors as well; what is reached from behind only where that is asked for.</summary>
    public static IEnumerable<OpeningContent> Within(this OpeningContent? content, bool alsoFromBehind = false) => content is null ? [] : content switch
    {
        Division division => division.Items.OfType<Opening>().SelectMany(o => o.Content.Within(alsoFromBehind).Concat(alsoFromBehind ? o.Behind?.Content.Within(true) ?? [] : [])).Prepend(content),
        DoorFilling doors => doors.Behind.Within(alsoFromBehind).Prepend(content),
        _ => [content],
    };
}
