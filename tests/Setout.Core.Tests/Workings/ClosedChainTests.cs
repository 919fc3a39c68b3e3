using System.Collections.Immutable;
using Setout.Core.Measures;
using Setout.Core.Workings;
using static Setout.Core.Tests.Workings.Quantities;

namespace Setout.Core.Tests.Workings;

public class ClosedChainTests
{
    // Three bays and four posts of 90 in a width of 1500, the last bay takes the rest: 1500 - 360 - 2 x 400 = 340.
    private static readonly Quantity[] s_quantities =
        [Stated("width", 1500), Stated("post", 90), Stated("a", 400), Stated("b", 400), Sum("c", (1, "width"), (-4, "post"), (-1, "a"), (-1, "b"))];

    private static readonly ClosedChain s_chain = new("bays and posts", Key("width"),
        [Term.From("posts", 4, Key("post")), Term.From("a", 1, Key("a")), Term.From("b", 1, Key("b")), Term.From("c", 1, Key("c"))], Key("c"));

    [Fact]
    public void Misfit_NothingRead_IsZero() => Assert.Equal(ExactLength.Zero, s_chain.Misfit(Work(s_quantities)));

    [Fact]
    public void Misfit_TermThatTheTakerFollows_IsZero() =>
        Assert.Equal(ExactLength.Zero, s_chain.Misfit(Work(s_quantities, ("post", Read(89)), ("a", Read(401)), ("width", Read(1502)))));

    [Theory]
    [InlineData(342, 2)]
    [InlineData(339, -1)]
    public void Misfit_TakerRead_SaysByHowMuchTheTermsAreTooLong(int read, int misfit) =>
        Assert.Equal(Mm(misfit), s_chain.Misfit(Work(s_quantities, ("c", Read(read)))));

    [Fact]
    public void Misfit_FigureAmongTheTerms_Counts()
    {
        ImmutableArray<Term> terms = s_chain.Terms.Add(Term.From("packing", 2, Mm(Rational.Of(1, 3)), Given));
        Assert.Equal(Mm(Rational.Of(2, 3)), (s_chain with { Terms = terms }).Misfit(Work(s_quantities)));
    }

    [Theory]
    [InlineData("width")]
    [InlineData("post")]
    public void Misfit_TermWithoutValue_IsNull(string missing) =>
        Assert.Null(s_chain.Misfit(Work(s_quantities.Where(q => q.Key.Text != missing))));
}
