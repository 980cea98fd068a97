using System.Reflection;
using Laygate.Model.Measures;
using Laygate.Model.Plans;

namespace Laygate.UnitTests.Engineering;

/// <summary>Random plans: every optional value is stated or not by chance, numbers include zero and absurd ones, ids may point nowhere.</summary>
internal static class RandomPlans
{
    private static readonly string[] Ids = ["a", "b", "c"];
    private static readonly double[] Numbers = [0, 1e-9, 0.1, 1, 2.5, 7, 24, 40, 100, 155, 1000, 1e12, -3];

    public static Plan Next(Random random)
    {
        var plan = (Plan)Make(typeof(Plan), random, 0)!;
        return plan with
        {
            Courses = [.. plan.Courses.DefaultIfEmpty(Small.Course).Select((course, i) => course with
            {
                Id = Ids[i], On = i > 0 && random.Next(2) == 0 ? Ids[i - 1] : course.On, Laid = i > 0 && random.Next(2) == 0 ? Laying.HotOnHot : course.Laid,
            })],
        };
    }

    private static object? Make(Type type, Random random, int depth)
    {
        var inner = Nullable.GetUnderlyingType(type) ?? type;
        if (inner.IsGenericType && inner.GetGenericTypeDefinition() == typeof(Measure<>))
        {
            return MakeMeasure(inner, random);
        }

        if (inner == typeof(IMeasure))
        {
            // The rate of a bond coat is stated by mass or by volume.
            return MakeMeasure(random.Next(2) == 0 ? typeof(Measure<AreaDensity>) : typeof(Measure<FilmThickness>), random);
        }

        if (inner.IsGenericType && inner.GetGenericTypeDefinition() == typeof(IReadOnlyList<>))
        {
            return MakeList(inner.GetGenericArguments()[0], random, depth);
        }

        return inner switch
        {
            _ when inner == typeof(string) => Ids[random.Next(Ids.Length)],
            _ when inner == typeof(int) => random.Next(-1, 9),
            _ when inner == typeof(bool) => random.Next(2) == 0,
            _ when inner == typeof(DateOnly) => new DateOnly(2027, 1 + random.Next(12), 1 + random.Next(28)),
            _ when inner == typeof(TimeOnly) => new TimeOnly(random.Next(24), 30),
            _ when inner == typeof(TimeSpan) => TimeSpan.FromHours(random.Next(-12, 13)),
            _ when inner == typeof(DateTime) => new DateTime(2027, 5, 1 + random.Next(3), random.Next(24), 0, 0, DateTimeKind.Unspecified),
            _ when inner == typeof(Sieve) => Sieve.Find("16 mm"),
            _ when inner.IsEnum => Enum.GetValues(inner).GetValue(random.Next(Enum.GetValues(inner).Length)),
            _ => MakeRecord(inner, random, depth + 1),
        };
    }

    private static object MakeMeasure(Type type, Random random)
    {
        var dimension = type.GetGenericArguments()[0].Name switch
        {
            "TemperatureDelta" => Dimension.TemperatureDifference,
            "AreaDensity" => Dimension.MassPerArea,
            "FilmThickness" => Dimension.VolumePerArea,
            "Ratio" => Dimension.Proportion,
            "ForcePerLength" => Dimension.ForcePerLength,
            "ElectricPotential" => Dimension.Voltage,
            "MassConcentration" => Dimension.Concentration,
            { } name => Enum.Parse<Dimension>(name),
        };
        var units = UnitTable.Of(dimension).ToList();
        return Activator.CreateInstance(type, Numbers[random.Next(Numbers.Length)], units[random.Next(units.Count)])!;
    }

    private static object MakeList(Type item, Random random, int depth)
    {
        var list = Array.CreateInstance(item, depth > 4 ? 0 : random.Next(4));
        for (var i = 0; i < list.Length; i++)
        {
            list.SetValue(Make(item, random, depth), i);
        }

        return list;
    }

    private static object MakeRecord(Type type, Random random, int depth)
    {
        var constructor = type.GetConstructors().OrderByDescending(made => made.GetParameters().Length).First();
        var nullability = new NullabilityInfoContext();
        var record = constructor.Invoke([.. constructor.GetParameters().Select(parameter =>
            MayBeMissing(nullability.Create(parameter), parameter.ParameterType, random) ? null : Make(parameter.ParameterType, random, depth))]);
        if (constructor.GetParameters().Length > 0)
        {
            return record;
        }

        foreach (var property in type.GetProperties().Where(property => property.CanWrite))
        {
            if (!MayBeMissing(nullability.Create(property), property.PropertyType, random))
            {
                property.SetValue(record, Make(property.PropertyType, random, depth));
            }
        }

        return record;
    }

    private static bool MayBeMissing(NullabilityInfo info, Type type, Random random) =>
        (info.ReadState == NullabilityState.Nullable || Nullable.GetUnderlyingType(type) is not null) && random.Next(4) == 0;
}
