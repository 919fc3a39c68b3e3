namespace Setout.Core.Measures.Text;

/// <summary>A text that could not be read: what kind of fault, where, in words, and what would be right.</summary>
/// <param name="Code">A stable code, such as <c>length.two-readings</c>.</param>
/// <param name="Position">Zero-based index into the text.</param>
/// <param name="Words">What is wrong, in words a woodworker uses.</param>
/// <param name="Remedy">What to write instead.</param>
public sealed record TextFault(string Code, int Position, string Words, string Remedy);

/// <summary>A value read from a text, or the fault that kept it from being read. Reading never throws for bad text.</summary>
/// <typeparam name="T">What was to be read.</typeparam>
public readonly record struct ParseResult<T>
{
    private readonly T? _value;

    private ParseResult(T? value, bool isRead, TextFault? fault) => (_value, IsRead, Fault) = (value, isRead, fault);

    /// <summary>The fault, or null when the text was read.</summary>
    public TextFault? Fault { get; }

    /// <summary>True when there is a value. The default of this type is not read and has no fault.</summary>
    public bool IsRead { get; }

    /// <summary>The value.</summary>
    /// <exception cref="InvalidOperationException">The text was not read; look at <see cref="Fault"/> first.</exception>
    public T Value => IsRead ? _value! : throw new InvalidOperationException($"Not read: {Fault?.Words}");

    /// <summary>A value that was read.</summary>
    public static ParseResult<T> Of(T value) => new(value, true, null);

    /// <summary>A fault.</summary>
    public static ParseResult<T> Failed(TextFault fault) => new(default, false, fault);

    /// <summary>A fault.</summary>
    public static ParseResult<T> Failed(string code, int position, string words, string remedy) =>
        new(default, false, new(code, position, words, remedy));
}
