using System.Reflection.Metadata;
using System.Reflection.Metadata.Ecma335;
using System.Reflection.PortableExecutable;
using Microsoft.Playwright;
using Setout.Tests.Browser;

namespace Setout.Tests.Architecture;

/// <summary>What is found on a page first and used second may have been replaced between: only <see cref="Looks"/> looks, since it asks in the same step whether it is still there. Read from what was compiled.</summary>
public sealed class LooksTests
{
    private static readonly HashSet<string> s_inTwoSteps =
    [
        nameof(ILocator.EvaluateAsync), nameof(ILocator.EvaluateAllAsync), nameof(ILocator.EvaluateHandleAsync), nameof(ILocator.ElementHandleAsync), nameof(ILocator.ElementHandlesAsync),
        nameof(ILocator.BoundingBoxAsync), nameof(ILocator.SelectTextAsync), nameof(ILocator.ScrollIntoViewIfNeededAsync),
    ];

    private static readonly HashSet<string> s_ofAPage =
        [nameof(IPage.QuerySelectorAsync), nameof(IPage.QuerySelectorAllAsync), nameof(IPage.EvalOnSelectorAsync), nameof(IPage.EvalOnSelectorAllAsync), nameof(IPage.WaitForSelectorAsync), nameof(IPage.EvaluateHandleAsync)];

    [Fact]
    public void Tests_LookAtWhatStandsOnAPageInOneStep()
    {
        using var file = new PEReader(File.OpenRead(typeof(LooksTests).Assembly.Location));
        MetadataReader read = file.GetMetadataReader();
        HashSet<int> banned = [.. read.MemberReferences.Where(m => IsInTwoSteps(read, m)).Select(m => MetadataTokens.GetToken(m))];
        for (int row = 1; row <= read.GetTableRowCount(TableIndex.MethodSpec); row++)
        {
            MethodSpecificationHandle spec = MetadataTokens.MethodSpecificationHandle(row);
            if (banned.Contains(MetadataTokens.GetToken(read.GetMethodSpecification(spec).Method))) banned.Add(MetadataTokens.GetToken(spec));
        }
        string[] callers = [.. read.MethodDefinitions.Select(read.GetMethodDefinition).Where(m => m.RelativeVirtualAddress != 0 && Calls(file.GetMethodBody(m.RelativeVirtualAddress).GetILBytes()!, banned)).Select(m => Owner(read, m)).Distinct()];
        Assert.Equal([nameof(Looks)], callers);
    }

    private static bool IsInTwoSteps(MetadataReader read, MemberReferenceHandle handle)
    {
        MemberReference member = read.GetMemberReference(handle);
        if (member.Parent.Kind != HandleKind.TypeReference) return false;
        string of = read.GetString(read.GetTypeReference((TypeReferenceHandle)member.Parent).Name), name = read.GetString(member.Name);
        return of == nameof(ILocator) ? s_inTwoSteps.Contains(name) : of is nameof(IPage) or nameof(IFrame) && s_ofAPage.Contains(name);
    }

    // call and callvirt, each with the token of what is called.
    private static bool Calls(byte[] code, HashSet<int> tokens)
    {
        for (int at = 0; at + 4 < code.Length; at++) if (code[at] is 0x28 or 0x6F && tokens.Contains(BitConverter.ToInt32(code, at + 1))) return true;
        return false;
    }

    // The type that stands in the source: what the compiler makes for a method that waits stands within it.
    private static string Owner(MetadataReader read, MethodDefinition method)
    {
        TypeDefinition type = read.GetTypeDefinition(method.GetDeclaringType());
        while (!type.GetDeclaringType().IsNil) type = read.GetTypeDefinition(type.GetDeclaringType());
        return read.GetString(type.Name);
    }
}
