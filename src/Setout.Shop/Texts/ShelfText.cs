using System.Collections.Immutable;
using Setout.Core.Pieces;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Reads the shelves of an opening.</summary>
internal static class ShelfText
{
    public static Shelves? Read(TextContext context, KeyBook keys, MapReader map)
    {
        Named? of = map.Text("of");
        Given? setback = map.Length("setback", mayBeZero: true);
        ShelfFit fit = map.OneOf("fit", ShelfFit.Fixed, ("fixed", ShelfFit.Fixed), ("dado", ShelfFit.Dado), ("adjustable", ShelfFit.Adjustable));
        Given? dado = map.Length("dado"), play = map.Length("play", mayBeZero: true), pitch = map.Length("pitch");
        foreach ((string key, string word, bool isIdle) in new[] { ("dado", "dado", dado is not null && fit != ShelfFit.Dado), ("play", "adjustable", play is not null && fit != ShelfFit.Adjustable), ("pitch", "adjustable", pitch is not null && fit != ShelfFit.Adjustable) })
            if (isIdle) context.Stop("shelves.idle", map.KeyPlaceOf(key), $"'{key}' is for shelves of another fit.", $"{context.Hand.Write("fit", word)}, or leave '{key}' out.");
        bool isGrainDeep = map.OneOf("grain", false, ("left to right", false), ("front to back", true)), isLowestDown = map.OneOf("lowest", false, ("spaced", false), ("at the bottom", true));
        Given? past = map.Length("past posts");
        if ((past is not null && fit != ShelfFit.Fixed) || (isLowestDown && fit == ShelfFit.Adjustable))
            context.Stop("shelves.idle", map.KeyPlaceOf(past is not null && fit != ShelfFit.Fixed ? "past posts" : "lowest"), $"'{(past is not null && fit != ShelfFit.Fixed ? "past posts" : "lowest")}' is for shelves of another fit.", $"{context.Hand.Write("fit", "fixed")}, or leave it out.");
        ShelfStrip? strip = map.Map("strip", "shelf-strip") is { } under ? new(under.Required("of", "oak"), under.Length("height"), under.Place) : null;
        ImmutableArray<Named> shelves = map.Keys("down");
        foreach (Named shelf in shelves) keys.Take(shelf.Text, shelf.Place);
        if (map.IsEmpty("down")) map.Missing("down", "[S1, S2]", "shelves.none", "There are no shelves here.");
        return shelves.Length > 0 ? new(of, setback, shelves) { Fit = fit, Dado = dado, Play = play, Pitch = pitch, Strip = strip, IsGrainDeep = isGrainDeep, IsLowestDown = isLowestDown, PastPosts = past } : null;
    }
}
