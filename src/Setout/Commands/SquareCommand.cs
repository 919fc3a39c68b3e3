using System.ComponentModel;
using System.Text;
using System.Text.Json;
using Setout.Core.Craft;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Shop.Outputs;
using Spectre.Console.Cli;

namespace Setout.Commands;

/// <summary><c>setout square --sides AB BC CD DA --diagonals AC BD [--lift D]</c>: squareness of any four-sided frame, corners named round.</summary>
internal sealed class SquareCommand : Command<SquareCommand.Settings>
{
    /// <summary>Parts the lengths that <see cref="Joined"/> put into one value.</summary>
    private const char Between = ';';

    /// <summary>What it takes.</summary>
    internal sealed class Settings : CommandSettings
    {
        /// <summary>The sides.</summary>
        [CommandOption("--sides <AB_BC_CD_DA>", isRequired: true)]
        [Description("The four sides in order round the frame, such as 36 24 36 24.")]
        public string Sides { get; set; } = "";

        /// <summary>The diagonals.</summary>
        [CommandOption("--diagonals <AC_BD>", isRequired: true)]
        [Description("The two diagonals, from the first corner to the third and from the second to the fourth.")]
        public string Diagonals { get; set; } = "";

        /// <summary>The lift.</summary>
        [CommandOption("--lift <D>")]
        [Description("How far the fourth corner stands off the plane of the other three.")]
        public string? Lift { get; set; }

        /// <summary>The unit.</summary>
        [CommandOption("--unit <UNIT>")]
        [Description("in or mm: what a bare number stands for (default in).")]
        [DefaultValue("in")]
        public string Unit { get; set; } = "in";

        /// <summary>JSON.</summary>
        [CommandOption("--json")]
        [Description(OptionWords.Json)]
        public bool Json { get; set; }
    }

    /// <summary>Joins the words after an option that takes several lengths: <c>--sides 23 1/4 36 23 1/4 36</c> is four of them.</summary>
    public static string[] Joined(string[] words)
    {
        var joined = new List<string>();
        for (int i = 0; i < words.Length; i++)
        {
            if (words[i] is not ("--sides" or "--diagonals" or "--lift"))
            {
                joined.Add(words[i]);
                continue;
            }
            var lengths = new List<string>();
            string option = words[i];
            while (i + 1 < words.Length && !words[i + 1].StartsWith("--", StringComparison.Ordinal))
            {
                string word = words[++i];
                // A whole number and a proper fraction are one reading.
                if (lengths.Count > 0 && lengths[^1].All(char.IsAsciiDigit) && word.Contains('/', StringComparison.Ordinal)) lengths[^1] += " " + word;
                else lengths.Add(word);
            }
            joined.Add($"{option}={string.Join(Between, lengths)}");
        }
        return [.. joined];
    }

    /// <inheritdoc/>
    public override int Execute(CommandContext context, Settings settings, CancellationToken cancellationToken)
    {
        var terminal = (Terminal)context.Data!;
        LengthUnit unit = settings.Unit switch
        {
            "in" => LengthUnit.Inch,
            "mm" => LengthUnit.Millimetre,
            _ => throw new UsageException($"There is no unit '{settings.Unit}'.", "Use in or mm."),
        };
        ExactLength[] sides = Lengths(settings.Sides, 4, "--sides", unit), diagonals = Lengths(settings.Diagonals, 2, "--diagonals", unit);
        ExactLength? lift = settings.Lift is { } text ? Lengths(text, 1, "--lift", unit)[0] : null;
        ExactLength reading = unit == LengthUnit.Inch ? ExactLength.FromInches(Rational.Of(1, 32)) : ExactLength.FromMillimetres(Rational.Of(1, 2));
        SquarenessResult result;
        try
        {
            result = Squareness.Of(new(sides[0], sides[1], sides[2], sides[3], diagonals[0], diagonals[1], lift), reading);
        }
        catch (ArgumentException impossible)
        {
            throw new UsageException(impossible.Message, "");
        }
        if (settings.Json) Told.Json(terminal, Json(result, unit));
        else Words(terminal.Out, result, unit);
        return ExitCode.Fine;
    }

    private static ExactLength[] Lengths(string text, int count, string option, LengthUnit unit)
    {
        string[] words = text.Split(Between, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length != count) throw new UsageException($"{option} wants {count} lengths and has {words.Length}.", count == 4 ? "Name them round the frame: --sides 36 24 36 24." : "");
        return
        [
            .. words.Select(w => LengthText.Parse(w, unit) is { IsRead: true } read
                ? read.Value
                : throw new UsageException($"{option}: '{w}' is not a length: {LengthText.Parse(w, unit).Fault!.Words}", LengthText.Parse(w, unit).Fault!.Remedy)),
        ];
    }

    private static string Say(ApproximateLength length, LengthUnit unit)
    {
        // Never finer than a person can read: 1/64 in or a tenth of a millimetre.
        Grid grid = unit == LengthUnit.Inch ? Grid.SixtyFourth : Grid.FromStep(Core.Measures.Length.FromTicks(Core.Measures.Length.TicksPerMillimetre / 10));
        return LengthFormat.For(unit).Text(length.RoundTo(grid, Rounding.Nearest));
    }

    private static void Words(TextWriter writer, SquarenessResult result, LengthUnit unit)
    {
        writer.WriteLine($"worst corner {result.OutOfSquare.Degrees.Value:0.000} degrees out of square; racking {Math.Abs(result.Racking.Degrees.Value):0.000} degrees, a lean of {Say(result.Lean, unit)} over the height");
        if (result.Verdict == FrameVerdict.Slip) writer.WriteLine($"these readings do not belong to one frame (off by {Say(result.Misfit, unit)} at least): measure again before pulling. If they hold after all:");
        writer.WriteLine(result.Shorten == Diagonal.None
            ? $"no racking to pull out: the diagonals are within {LengthFormat.For(unit).Text(result.Tolerance)} of where they belong (AC {Say(result.TargetAC, unit)}, BD {Say(result.TargetBD, unit)})"
            : $"pull {result.Shorten} in by {Say(result.By, unit)}, until AC reads {Say(result.TargetAC, unit)} and BD {Say(result.TargetBD, unit)}");
        if (result.EqualDiagonalsMislead) writer.WriteLine("the diagonals are alike and it is not square all the same: opposite sides differ. Pulling will not mend it; recut a side.");
        switch (result.Verdict)
        {
            case FrameVerdict.Wind:
                writer.WriteLine($"the frame is in wind: the fourth corner stands about {Say(result.Wind, unit)} off. Lay winding sticks over it and flatten it before pulling it square.");
                break;
        }
        writer.WriteLine("Bar clamps under load can slip: pull slowly and keep your face out of their line. " + Cautions.Deference);
    }

    private static byte[] Json(SquarenessResult result, LengthUnit unit)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, new JsonWriterOptions { Indented = true, NewLine = "\n" }))
        {
            json.WriteStartObject();
            json.WriteNumber("out_of_square_deg", Math.Round(result.OutOfSquare.Degrees.Value, 6));
            json.WriteNumber("racking_deg", Math.Round(result.Racking.Degrees.Value, 6) + 0.0);
            Length(json, "lean", result.Lean, unit);
            if (result.Shorten == Diagonal.None) json.WriteNull("shorten");
            else json.WriteString("shorten", result.Shorten.ToString());
            Length(json, "by", result.By, unit);
            if (result.Target is { } target) Length(json, "target", target, unit);
            else json.WriteNull("target");
            Length(json, "target_ac", result.TargetAC, unit);
            Length(json, "target_bd", result.TargetBD, unit);
            json.WriteBoolean("equal_diagonals_mislead", result.EqualDiagonalsMislead);
            Length(json, "misfit", result.Misfit, unit);
            Length(json, "wind", result.Wind, unit);
            json.WriteString("verdict", result.Verdict.ToString().ToLowerInvariant());
            PlanJson.WriteLength(json, "tolerance", result.Tolerance, unit);
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(stream.ToArray()) + "\n");
    }

    private static void Length(Utf8JsonWriter json, string name, ApproximateLength length, LengthUnit unit) =>
        PlanJson.WriteLength(json, name, length.RoundTo(Grid.FromStep(Core.Measures.Length.FromTicks(1)), Rounding.Nearest), unit);
}
