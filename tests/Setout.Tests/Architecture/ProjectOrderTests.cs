using System.Reflection.Metadata;
using System.Reflection.PortableExecutable;
using System.Xml.Linq;
using Setout.Testing;

namespace Setout.Tests.Architecture;

/// <summary>The order of projects, in the project files and in what was compiled.</summary>
public sealed class ProjectOrderTests
{
    private static readonly IReadOnlyList<string> s_projectFiles = Repository.FilesIn(".", "*.csproj");

    [Fact]
    public void ProjectFiles_Order_IsKept()
    {
        Assert.NotEmpty(s_projectFiles);
        Assert.Empty(s_projectFiles.SelectMany(file => ProjectOrder.Breaches(Name(file), References(XDocument.Load(Repository.PathOf(file))))));
    }

    [Fact]
    public void ProjectFiles_EachOfTheSolution_IsInTheSolutionFile()
    {
        var solution = XDocument.Load(Repository.PathOf("Setout.slnx"));
        IEnumerable<string> listed = solution.Descendants("Project").Select(p => p.Attribute("Path")!.Value);
        Assert.Equal(s_projectFiles.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Core_Packages_AreNone()
    {
        var core = XDocument.Load(Repository.PathOf("src/Setout.Core/Setout.Core.csproj"));
        Assert.Empty(core.Descendants("PackageReference").Concat(core.Descendants("Reference")).Concat(core.Descendants("FrameworkReference")));

        // The compiled assembly names nothing but the base library; analyzers leave no trace in it.
        Assert.All(AssembliesNamedBy("Setout.Core"), name => Assert.True(name.StartsWith("System.", StringComparison.Ordinal), name));
    }

    [Fact]
    public void CompiledAssemblies_Order_IsKept()
    {
        // The host or these tests name every project of src, so all of them lie here.
        string[] sources = [.. s_projectFiles.Where(f => f.StartsWith("src/", StringComparison.Ordinal)).Select(Name)];
        Assert.Contains("Setout.Core", sources);
        Assert.Empty(sources.SelectMany(project => ProjectOrder.Breaches(project, AssembliesNamedBy(project).Where(IsOurs))));
        Assert.Empty(ProjectOrder.Breaches("Setout.Tests", AssembliesNamedBy("Setout.Tests").Where(IsOurs)));
        // The reader sees references where there are some.
        Assert.Contains("Setout.Testing", AssembliesNamedBy("Setout.Tests"));
    }

    [Theory]
    [InlineData("Setout.Core", "Setout.Cutting", false)]
    [InlineData("Setout.Cutting", "Setout.Core", true)]
    [InlineData("Setout.Drawing", "Setout.Core", true)]
    [InlineData("Setout.Cutting", "Setout.Drawing", false)]
    [InlineData("Setout.Shop", "Setout.Drawing", true)]
    [InlineData("Setout.Shop", "Setout", false)]
    [InlineData("Setout.Shop", "Setout.Store", false)]
    [InlineData("Setout.Shop", "Setout.Solvers", false)]
    [InlineData("Setout.Solvers", "Setout.Cutting", true)]
    [InlineData("Setout.Solvers", "Setout.Drawing", false)]
    [InlineData("Setout.Store", "Setout.Shop", true)]
    [InlineData("Setout.Store", "Setout.Solvers", false)]
    [InlineData("Setout", "Setout.Store", true)]
    [InlineData("Setout", "Setout.Testing", false)]
    [InlineData("Setout.Quality", "Setout.Solvers", true)]
    [InlineData("Setout.Solvers.Tests", "Setout.Solvers", true)]
    [InlineData("Setout.Cutting.Tests", "Setout.Solvers", false)]
    [InlineData("Setout.Cutting.Tests", "Setout.Testing", true)]
    [InlineData("Setout.Core.Tests", "Setout.Cutting", false)]
    [InlineData("Setout.Extra", "Setout.Core", false)]
    [InlineData("Setout.Extra.Tests", "Setout.Core", false)]
    public void Order_EachPair_IsAsTheDesignSays(string project, string other, bool allowed) =>
        Assert.Equal(allowed, ProjectOrder.Breaches(project, [other]).Count == 0);

    [Fact]
    public void References_OfAProjectFile_AreRead() => Assert.Equal(["Setout.Shop"], References(XDocument.Parse(
        "<Project><ItemGroup><ProjectReference Include=\"..\\Setout.Shop\\Setout.Shop.csproj\" /></ItemGroup></Project>")));

    private static IEnumerable<string> References(XDocument project) =>
        project.Descendants("ProjectReference").Select(r => Name(r.Attribute("Include")!.Value.Replace('\\', '/')));

    private static string Name(string path) => Path.GetFileNameWithoutExtension(path);

    private static bool IsOurs(string assembly) => assembly.StartsWith("Setout", StringComparison.OrdinalIgnoreCase);

    private static string[] AssembliesNamedBy(string project)
    {
        // The host's assembly carries the name of the command.
        string file = Path.Combine(AppContext.BaseDirectory, (project == "Setout" ? "setout" : project) + ".dll");
        using var assembly = new PEReader(File.OpenRead(file));
        MetadataReader reader = assembly.GetMetadataReader();
        return [.. reader.AssemblyReferences.Select(r => reader.GetString(reader.GetAssemblyReference(r).Name)).Select(n => n == "setout" ? "Setout" : n)];
    }
}
