using System.Collections.Immutable;
using Setout.Core.Workings;

namespace Setout.Shop.Texts;

/// <summary>Ways to say where something of the shop is told: in its file, or on its page.</summary>
public static class ShopHands
{
    /// <summary>What the page of the shop is called in a sentence.</summary>
    public const string ShopPage = "“the shop”";

    /// <summary>What all saws of it are called there.</summary>
    public const string SawsOfPage = "“the saws of the shop”";

    /// <summary>What its wood is called there.</summary>
    public const string WoodOfPage = "“the wood of the shop”";

    extension(Hand hand)
    {
        /// <summary>The shop file, or the page of the shop.</summary>
        public string Shop => hand.Say("the shop file", ShopPage);

        /// <summary>Where a figure of a saw is told, in brackets behind the figure.</summary>
        /// <param name="saw">Its key in the shop file, such as <c>fence</c>.</param>
        /// <param name="key">The key of the figure; empty for the saw.</param>
        public string Saw(string saw, string key = "") => hand.Say(key.Length == 0 ? $"(saws: {saw})" : $"(saws: {saw}: {key})", $"({SawOnPage(saw)})");
    }

    private static readonly ImmutableArray<(string Saw, string Page)> s_saws = [("fence", "“the table saw”"), ("sled", "“the sled”"), ("boards", "“the crosscut saw”"), ("guided", "“the hand-held saw”")];

    /// <summary>What a saw is called where a page leads to it.</summary>
    /// <param name="saw">Its key in the shop file.</param>
    public static string SawOnPage(string saw) => s_saws.First(s => s.Saw == saw).Page;

    /// <summary>The key of the saw that a page calls so; null for none.</summary>
    public static string? SawOf(string page) => s_saws.FirstOrDefault(s => s.Page == page).Saw;
}
