namespace Setout.Commands;

/// <summary>The value of an option, as the library gives it.</summary>
internal static class OptionValue
{
    /// <summary>True when the option stands there without a value, for which the library puts a word of its own.</summary>
    public static bool IsMissing(string value) => string.IsNullOrWhiteSpace(value) || value == "__default_command";
}
