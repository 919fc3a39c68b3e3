using Setout.Workbench.Changing;

namespace Setout.Workbench.Noting;

/// <summary>A form that lets something stand.</summary>
/// <param name="Head">What goes along.</param>
/// <param name="Id">What the ids of its fields begin with.</param>
/// <param name="Code">The code.</param>
/// <param name="Key">What it is about.</param>
/// <param name="Because">The reason that is proposed; empty for none.</param>
/// <param name="About">What is let stand, in a few words, for who hears the button alone.</param>
public sealed record AllowForm(FormHead Head, string Id, string Code, string Key, string Because, string About);
