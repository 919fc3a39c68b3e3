using Setout.Core.Workings;
using Setout.Shop.Texts;

namespace Setout.Shop.Edits;

/// <summary>What is looked at when what was looked at is no more, as after a step was taken back.</summary>
public static class WhatIsLeft
{
    /// <summary>The same key where what it belongs to is still there, or never was in the text; else what it stood in, the nearest that is there; empty for the whole piece.</summary>
    /// <param name="before">The text in which it was.</param>
    /// <param name="after">The text now.</param>
    /// <param name="key">Of a thing, a part or a size.</param>
    public static string Of(string before, string after, string key)
    {
        string owner = new QuantityKey(key).Owner;
        Thing[] was = Things(before), now = Things(after);
        if (now.Any(t => t.Key == owner) || was.FirstOrDefault(t => t.Key == owner) is not { } gone) return key;
        return was.LastOrDefault(t => t.Steps.Length < gone.Steps.Length && gone.Steps.AsSpan().StartsWith(t.Steps.AsSpan()) && now.Any(n => n.Key == t.Key))?.Key ?? "";
    }

    private static Thing[] Things(string text) => YamlTree.Read(text).Value is { } root ? [.. Thing.In(root)] : [];
}
