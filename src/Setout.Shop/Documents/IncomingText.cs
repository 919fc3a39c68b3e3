using System.Text.RegularExpressions;
using Setout.Core.Workings;

namespace Setout.Shop.Documents;

/// <summary>A file that is offered for import.</summary>
/// <param name="File">Its name without folder.</param>
/// <param name="Text">What it holds; null when it cannot be read.</param>
/// <param name="Fault">Why it cannot be read; null when it can.</param>
public sealed partial record IncomingText(string File, string? Text, Finding? Fault = null)
{
    /// <summary>What a text says it is, by the key of its version: <c>setout</c>, <c>setout-shop</c> or <c>setout-log</c>; empty when it says nothing. The rest
    /// may be unsound: what is half written is a text too.</summary>
    public static string KeyOf(string text) => OurKey().Match(text) is { Success: true } key ? key.Groups[1].Value : "";

    [GeneratedRegex("^(?:\\uFEFF)?(?:\\{ *)?(setout(?:-shop|-log)?) *:", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex OurKey();
}

/// <summary>What an import does with a file.</summary>
public enum ImportAct
{
    /// <summary>A document or a log comes that was not there, or entries come to a log.</summary>
    Added,

    /// <summary>The document gets another text, or is taken back.</summary>
    Changed,

    /// <summary>All of it is there already.</summary>
    Left,

    /// <summary>It cannot be taken; the others can.</summary>
    Refused,
}

/// <summary>What an import does with one file.</summary>
/// <param name="File">Its name.</param>
/// <param name="Act">Which.</param>
/// <param name="Words">For people, such as <c>2 of 5 entries come to the log of 'chest'</c>.</param>
/// <param name="Fault">Why it is refused, with a remedy; null when it is not.</param>
public sealed record ImportLine(string File, ImportAct Act, string Words, Finding? Fault = null);
