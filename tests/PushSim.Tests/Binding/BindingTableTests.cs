using PushSim.Binding;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Tests.Binding;

/// <summary>Each kind has its own words and keys.</summary>
public class BindingTableTests
{
    public static TheoryData<BindingKind> Kinds => [.. Enum.GetValues<BindingKind>()];

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Each_kind_has_a_row_that_its_key_leads_back_to(BindingKind kind)
    {
        Assert.Equal(kind, BindingTable.Parse(BindingTable.Key(kind)));
        Assert.All([BindingTable.Key(kind), BindingTable.WheelKey(kind)], key => Assert.Matches("^[a-z]+(_[a-z]+)*$", key));
        Assert.All([BindingTable.Words(kind), BindingTable.WheelWords(kind), BindingTable.Short(kind)], words => Assert.NotEmpty(words));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Beside_another_kind_nothing_is_said_to_add_nothing(BindingKind kind)
    {
        Assert.DoesNotContain("nothing", BindingTable.Advice(kind, isAlone: false), StringComparison.Ordinal);
        Assert.StartsWith(BindingTable.Advice(kind, isAlone: false), BindingTable.Advice(kind, isAlone: true), StringComparison.Ordinal);
    }

    [Fact]
    public void No_two_kinds_share_a_key_or_a_word()
    {
        Func<BindingKind, string>[] columns = [BindingTable.Key, BindingTable.WheelKey, BindingTable.Words, BindingTable.WheelWords, BindingTable.Short];
        Assert.All(columns, column => Assert.Distinct(Enum.GetValues<BindingKind>().Select(column)));
        Assert.Equal(BindingRule.Kinds, Enum.GetValues<BindingKind>().Length);
        Assert.Null(BindingTable.Parse("lifted wheels"));
        Assert.Null(BindingTable.Parse(""));
    }

    // scripts know four parts
    [Theory]
    [InlineData(BindingKind.Nothing, null)]
    [InlineData(BindingKind.Tyre, "tyres")]
    [InlineData(BindingKind.CurrentLimit, "controllers")]
    [InlineData(BindingKind.Heat, "controllers")]
    [InlineData(BindingKind.Series, "tyres")]
    [InlineData(BindingKind.Battery, "battery")]
    [InlineData(BindingKind.Motor, "motors")]
    [InlineData(BindingKind.Lifted, "tyres")]
    public void Each_kind_belongs_to_a_part(BindingKind kind, string? part)
    {
        Assert.Equal(part, BindingTable.PartKey(kind));
        Assert.Null(BindingTable.PartKey(null));
    }

    [Fact]
    public void A_lifted_wheel_is_told_beside_what_binds_the_others()
    {
        var both = new BindingShares([(BindingKind.Motor, 0.6), (BindingKind.Tyre, 0.35), (BindingKind.Battery, 0.05)], 0.2);
        Assert.Equal("motors, then tyres (with a wheel off the floor)", BindingTable.Phrase(both));
        Assert.Equal("top speed, then tyres", BindingTable.Phrase(both with { LiftedShare = 0.09 }, "top speed"));
        Assert.Equal("lifted wheels", BindingTable.Phrase(BindingShares.Of(BindingKind.Lifted) with { LiftedShare = 1.0 }));
    }
}
