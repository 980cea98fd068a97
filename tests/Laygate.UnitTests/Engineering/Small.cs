using Laygate.Model.Plans;
using static Laygate.UnitTests.Engineering.Stated;

namespace Laygate.UnitTests.Engineering;

/// <summary>The least that a plan must state.</summary>
internal static class Small
{
    public static Mix Mix { get; } = new() { Id = "m" };

    public static Course Course { get; } = new() { Id = "c", Mix = "m", Thickness = Mm(40) };

    public static Plan Plan { get; } = new()
    {
        Format = 1,
        Identity = new Identity { Id = "small", Stage = Stage.Concept },
        Mixes = [Mix],
        Courses = [Course],
    };
}
