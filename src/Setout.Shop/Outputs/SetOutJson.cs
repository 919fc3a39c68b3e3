using System.Text.Json;
using Setout.Core.Measures;
using Setout.Core.Measures.Text;
using Setout.Core.SettingOut;
using Setout.Core.Workings;

namespace Setout.Shop.Outputs;

/// <summary>Writes what setting out says beside the sizes: choices, chains, gaps, joints, machining, hardware.</summary>
internal static class SetOutJson
{
    public static void Write(Utf8JsonWriter json, SetPiece set)
    {
        LengthUnit unit = set.Piece.Unit;
        List(json, "choices", set.Choices, choice =>
        {
            json.WriteString("key", choice.Key.Text);
            json.WriteString("name", choice.Name);
            json.WriteString("chosen", choice.Chosen);
            PlanJson.Length(json, "value", choice.Value, unit);
            json.WriteString("reason", choice.Reason);
            if (choice.Decides is { } decides) json.WriteString("decides", decides.Text);
            if (choice.FlipsUpAt is { } up) PlanJson.Length(json, "flips_up_at", up, unit);
            if (choice.FlipsDownBelow is { } down) PlanJson.Length(json, "flips_down_below", down, unit);
        });
        List(json, "chains", set.Chains, chain =>
        {
            json.WriteString("name", chain.Name);
            json.WriteString("whole", chain.Whole.Text);
            List(json, "terms", chain.Terms, term =>
            {
                json.WriteString("words", term.Words);
                json.WriteString("times", term.Times.ToString());
                if (term.Of is { } of) json.WriteString("of", of.Text);
                if (term.Figure is { } figure) PlanJson.Length(json, "value", figure.Value, unit);
            });
            json.WriteString("takes_up", chain.TakesUp.Text);
            if (chain.Misfit(set.Worked) is { } misfit) PlanJson.Length(json, "misfit", misfit, unit);
        });
        List(json, "gaps", set.Gaps.Where(g => set.Worked.Values.ContainsKey(g.Key)), gap =>
        {
            json.WriteString("key", gap.Key.Text);
            json.WriteString("name", gap.Name);
            PlanJson.Length(json, "value", set.Worked[gap.Key], unit);
            PlanJson.Length(json, "least", gap.Least, unit);
            PlanJson.Length(json, "most", gap.Most, unit);
            json.WriteString("source", gap.Source);
        });
        List(json, "joints", set.Joints, joint =>
        {
            json.WriteString("kind", joint.Kind.Word());
            json.WriteString("part", joint.Part);
            json.WriteString("meets", Word(joint.Meets));
            json.WriteString("against", joint.Against);
            json.WriteString("on", Word(joint.On));
            json.WriteString("held", joint.Held);
        });
        List(json, "machining", set.Machinings, machining =>
        {
            json.WriteString("part", machining.Part);
            json.WriteString("words", machining.Words);
            json.WriteString("where", machining.Where);
            List(json, "members", machining.Members, member =>
            {
                json.WriteNumber("number", member.Number);
                if (member.Which.Length > 0) json.WriteString("which", member.Which);
                json.WriteStartArray("faces");
                foreach (string face in member.Faces) json.WriteStringValue(face);
                json.WriteEndArray();
            });
            List(json, "figures", machining.Figures, figure =>
            {
                json.WriteString("name", figure.Name);
                json.WriteString("key", figure.Key.Text);
                PlanJson.Length(json, "value", set.Worked[figure.Key], unit);
            });
        });
        List(json, "hardware", set.Hardware, item =>
        {
            json.WriteString("key", item.Key);
            json.WriteString("name", item.Name);
            json.WriteNumber("count", item.Count);
            json.WriteString("unit", item.Unit);
            json.WriteString("source", item.Source);
        });
    }

    private static string Word(Face face) => face.InWords();

    internal static void List<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (T item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}
