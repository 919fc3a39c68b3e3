using System.Text.Json;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.SettingOut.Finishes;

namespace Setout.Shop.Outputs;

/// <summary>Writes what is finished with what: areas to a hundredth of a square millimetre, amounts to a hundredth of a millilitre upwards.</summary>
internal static class FinishJson
{
    /// <summary>The finishes of a piece.</summary>
    public static void Write(Utf8JsonWriter json, SetPiece set)
    {
        json.WriteStartArray("finishes");
        foreach (FinishWork work in FinishWork.Of(set))
        {
            json.WriteStartObject();
            json.WriteString("name", work.Finish.Name);
            json.WriteString("finish", work.Finish.Product.Text);
            json.WriteNumber("coats", work.Finish.Coats);
            Area(json, "area", work.Area, set.Piece.Unit);
            if (work.Finish.Covers is { } covers) json.WriteString("covers", AmountText.Of(covers));
            if (work.Needed is { } needed)
            {
                json.WriteStartObject("needed");
                json.WriteNumber("ml", Hundredths(needed.Millilitres, Rounding.Up));
                json.WriteString("text", AmountText.Needed(needed));
                json.WriteEndObject();
            }
            if (work.Finish.Can is { } can) json.WriteString("can", AmountText.Of(can));
            if (work.Cans is { } cans) json.WriteNumber("cans", cans);
            json.WriteStartArray("parts");
            foreach (FinishedPart part in work.Parts)
            {
                json.WriteStartObject();
                json.WriteString("part", part.Part.Key);
                json.WriteNumber("count", part.Part.Count);
                Area(json, "area", part.Surface.OfAll, set.Piece.Unit);
                json.WriteString("when", part.Time == FinishTime.Before ? "before" : "after");
                if (part.Step is { } step) json.WriteNumber("step", step);
                json.WriteNumber("finished", set.Facts.FinishedOf(part.Part));
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Area(Utf8JsonWriter json, string name, ExactArea area, LengthUnit unit)
    {
        json.WriteStartObject(name);
        json.WriteNumber("mm2", Hundredths(area.SquareMillimetres, Rounding.Nearest));
        json.WriteString("text", AmountText.Of(area, unit));
        json.WriteEndObject();
    }

    private static decimal Hundredths(Rational value, Rounding rounding) => (decimal)(value * 100).Round(rounding) / 100;
}
