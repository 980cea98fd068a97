using System.Globalization;
using System.Text;

namespace Laygate.ConformanceTests.Docs;

/// <summary>
/// The licences of everything that is built with: each is on the list of those that may be used, and the page that travels with the program names
/// them. The page is written anew with <c>LAYGATE_APPROVE</c>; a licence that is new is put on the list by hand, or the package is not used.
/// </summary>
public sealed class ThirdPartyNoticesTests
{
    // May stand in what is given away: they ask for their text and the copyright, no more.
    private static readonly HashSet<string> Shipped = new(StringComparer.Ordinal) { "MIT", "MIT-0", "Apache-2.0", "PostgreSQL" };

    // Tools that tests start, unchanged and never given away.
    private static readonly HashSet<string> OnlyTests = new(Shipped, StringComparer.Ordinal) { "BSD-2-Clause", "BSD-3-Clause", "ISC", "MS-PL", "MPL-2.0", "(MIT AND Zlib)" };

    private static readonly Lazy<(IReadOnlyList<LicensedPackage> Program, IReadOnlyList<LicensedPackage> Tests, IReadOnlyList<LicensedPackage> Tools)> All = new(() =>
    {
        var program = LicensedPackage.Restored("src");
        return (program, [.. LicensedPackage.Restored("tests").Except(program)], LicensedPackage.OfNode("tests/Tools/package-lock.json"));
    });

    [Fact]
    public void Every_package_of_the_program_has_a_licence_that_may_be_given_away() => Assert.All(All.Value.Program, package => Assert.Contains(package.Licence, Shipped));

    [Fact]
    public void Every_package_of_the_tests_has_a_licence_that_may_be_used() => Assert.All(All.Value.Tests.Concat(All.Value.Tools), package => Assert.Contains(package.Licence, OnlyTests));

    [Fact]
    public void The_page_names_every_package_with_its_licence() => Approved.File_holds("docs/third-party-notices.md", Page());

    [Fact]
    public void Every_licence_that_may_be_given_away_has_its_text() =>
        Assert.All(Shipped, licence => Assert.True(licence is "Apache-2.0" || LicenceTexts.Of.ContainsKey(licence), licence));

    private static string Page()
    {
        var (program, tests, tools) = All.Value;
        var text = new StringBuilder($"""
            # Third-party notices

            Laygate itself is licensed under the Apache License 2.0 (file `LICENSE`, which travels with the program like this page). It is built with the packages below; direct and transitive ones are listed as the lock files name them. Licence and copyright are those that each package states. The program that is compiled ahead of time, and the single file, also hold parts of the .NET runtime (MIT, Copyright (c) .NET Foundation and Contributors), which lists what it contains at https://github.com/dotnet/runtime/blob/main/THIRD-PARTY-NOTICES.TXT.

            This page is written from the restored packages by a test, which also holds every licence against a list of those that may be used.

            ## Packages of the program and the service

            Some only help to build them and are in neither.


            """);
        Table(text, program);
        text.Append("\n## Packages of the tests\n\nThey are part of no program that is given away.\n\n");
        Table(text, tests);
        text.Append("\n## Tools that tests start\n\nFrom npm, as `tests/Tools/package-lock.json` names them; they are part of no program that is given away.\n\n");
        text.Append("| package | version | licence |\n|---|---|---|\n");
        foreach (var tool in tools)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {tool.Name} | {tool.Version} | {tool.Licence} |\n");
        }

        text.Append("\n## Texts\n\nApache-2.0: see the file `LICENSE`.\n");
        foreach (var licence in program.Select(package => package.Licence).Distinct(StringComparer.Ordinal).Where(LicenceTexts.Of.ContainsKey).Order(StringComparer.Ordinal))
        {
            text.Append(CultureInfo.InvariantCulture, $"\n### {licence}\n\n{LicenceTexts.Of[licence].Trim()}\n");
        }

        return text.ToString();
    }

    private static void Table(StringBuilder text, IReadOnlyList<LicensedPackage> packages)
    {
        text.Append("| package | version | licence | copyright |\n|---|---|---|---|\n");
        foreach (var package in packages)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {package.Name} | {package.Version} | {package.Licence} | {package.Copyright} |\n");
        }
    }
}
