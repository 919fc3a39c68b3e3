namespace Setout.Testing.Architecture;

/// <summary>
/// Layers of one assembly: those of a row may see the rows before it and themselves, never a later row nor each other.
/// A layer is a namespace below the root, with all namespaces below it.
/// </summary>
public sealed class NamespaceOrder(string root, params string[][] rows)
{
    /// <summary>What breaks the order, in words; empty when nothing does. A namespace that is in no row breaks it too.</summary>
    public IReadOnlyList<string> Breaches(IEnumerable<TypeReference> references, IEnumerable<string> namespaces)
    {
        var breaches = new List<string>();
        foreach (string name in namespaces.Distinct().Where(n => IsOurs(n) && LayerOf(n) is null).Order(StringComparer.Ordinal))
            breaches.Add($"{name} is in no layer: give it a place in the order");
        foreach (TypeReference reference in references)
        {
            if (LayerOf(reference.FromNamespace) is not { } from || LayerOf(reference.ToNamespace) is not { } to) continue;
            bool allowed = from == to || to.Row < from.Row;
            if (!allowed) breaches.Add($"{reference.FromNamespace}.{reference.From} may not see {reference.ToNamespace}.{reference.To}");
        }
        return breaches;
    }

    private bool IsOurs(string name) => name == root || name.StartsWith(root + ".", StringComparison.Ordinal);

    private (int Row, string Name)? LayerOf(string name)
    {
        for (int row = 0; row < rows.Length; row++)
            foreach (string layer in rows[row])
                if (name == $"{root}.{layer}" || name.StartsWith($"{root}.{layer}.", StringComparison.Ordinal)) return (row, layer);
        return null;
    }
}
