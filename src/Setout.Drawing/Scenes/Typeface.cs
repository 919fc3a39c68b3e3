using Setout.Drawing.Fonts;

namespace Setout.Drawing.Scenes;

/// <summary>The three files of the one typeface.</summary>
public enum Face
{
    /// <summary>Upright.</summary>
    Regular,

    /// <summary>Heavy.</summary>
    SemiBold,

    /// <summary>Slanted.</summary>
    Italic,
}

/// <summary>The files in <c>assets/fonts</c>, embedded in this assembly, and their measures.</summary>
public static class Typeface
{
    /// <summary>The family name inside the files.</summary>
    public const string Family = "IBM Plex Sans";

    private static readonly Lazy<FontFile>[] s_fonts =
        [.. Enum.GetValues<Face>().Select(face => new Lazy<FontFile>(() => FontFile.Read(File(face))))];

    /// <summary>The name of the embedded file.</summary>
    public static string FileName(Face face) => $"IBMPlexSans-{face}.ttf";

    /// <summary>The bytes of the embedded file.</summary>
    public static byte[] File(Face face)
    {
        using Stream stream = typeof(Typeface).Assembly.GetManifestResourceStream(FileName(face))
            ?? throw new InvalidOperationException($"{FileName(face)} is not embedded.");
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }

    /// <summary>A face with its measures and outlines; read once.</summary>
    internal static FontFile Font(Face face) => s_fonts[(int)face].Value;

    /// <summary>The face that a run is drawn in.</summary>
    public static Face Of(Run run) => run.IsBold ? Face.SemiBold : run.IsItalic ? Face.Italic : Face.Regular;
}
