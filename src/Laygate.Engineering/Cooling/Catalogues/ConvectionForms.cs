namespace Laygate.Engineering.Cooling.Catalogues;

/// <summary>A published form of the heat transfer coefficient between skin and air.</summary>
/// <param name="Id">Short name after the publication, lower case with hyphens.</param>
/// <param name="Name">Author or standard.</param>
/// <param name="Formula">The formula in words: h in W/(m² K), v in m/s, temperatures in °C unless K is said.</param>
/// <param name="Coefficient">h in W/(m² K) from wind speed at mat level in m/s, skin temperature in °C, air temperature in °C.</param>
/// <param name="DependsOnSurface">Whether h changes with the temperatures.</param>
/// <param name="IncludesRadiation">Whether long-wave exchange is contained, so that it must not be added again.</param>
/// <param name="HasStillAirTerm">Whether h stays above zero without wind; a form without is unfit for calm air.</param>
/// <param name="Source">Document, edition, place.</param>
/// <param name="Evidence">How the formula is known.</param>
/// <param name="Range">Range of validity and what happens outside it.</param>
public sealed record ConvectionForm(
    string Id,
    string Name,
    string Formula,
    Func<double, double, double, double> Coefficient,
    bool DependsOnSurface,
    bool IncludesRadiation,
    bool HasStillAirTerm,
    string Source,
    SourceEvidence Evidence,
    string Range);

/// <summary>
/// Published convection forms. Between 3 and 10 m/s the first five agree within about 20 %; in calm air they differ widely.
/// All take the wind at mat level (see <see cref="WindHeight"/>) and are evaluated as they stand outside their range.
/// </summary>
public static class ConvectionForms
{
    private const string PublicReference = "EnergyPlus Engineering Reference (NREL), outside surface heat balance";
    private const string NotStated = "wind ≥ 0; no upper bound stated, evaluated as it stands";

    /// <summary>h = 7.4 + 6.39 v^0.75. Its constant already holds some long-wave exchange, so with separate long-wave it cools too fast.</summary>
    public static ConvectionForm Barber { get; } = new(
        "barber-1957", "Alford, Ryan and Urban; Barber", "7.4 + 6.39 v^0.75", (v, _, _) => 7.4 + (6.39 * Math.Pow(v, 0.75)), false, false, true,
        "Alford, Ryan and Urban 1939; Barber 1957; Jordan and Thomas, TRRL 1976 (1.3 + 0.62 V^0.75 Btu/(h ft² °F), V in mph)", SourceEvidence.Recalled,
        NotStated + "; the constant holds part of the long-wave exchange");

    /// <summary>h = 7.03 v^0.8.</summary>
    public static ConvectionForm CorlewDickson { get; } = new(
        "corlew-dickson-1968", "Corlew and Dickson", "7.03 v^0.8", (v, _, _) => 7.03 * Math.Pow(v, 0.8), false, false, false,
        "Corlew and Dickson, AAPT 1968 (0.65 V^0.8 Btu/(h ft² °F), V in mph)", SourceEvidence.Recalled,
        "not for calm air: goes to zero with the wind");

    /// <summary>h = 5.8 + 3.94 v.</summary>
    public static ConvectionForm NusseltJuerges { get; } = new(
        "nusselt-juerges-1922", "Nusselt and Juerges", "5.8 + 3.94 v", (v, _, _) => 5.8 + (3.94 * v), false, false, true,
        "Nusselt and Juerges 1922 after Palyvos 2008, in: " + PublicReference, SourceEvidence.SecondHand, NotStated);

    /// <summary>h = 5.7 + 3.8 v.</summary>
    public static ConvectionForm McAdams { get; } = new(
        "mcadams-1954", "McAdams", "5.7 + 3.8 v", (v, _, _) => 5.7 + (3.8 * v), false, false, true,
        "McAdams 1954 after Palyvos 2008, in: " + PublicReference, SourceEvidence.SecondHand,
        "often quoted for wind below 5 m/s only; evaluated as it stands above");

    /// <summary>h = 4 + 4 v, the house default: the convective part only, long-wave is added apart and not counted twice.</summary>
    public static ConvectionForm Iso6946 { get; } = new(
        "en-iso-6946", "EN ISO 6946, external surface, convective part", "4 + 4 v", (v, _, _) => 4 + (4 * v), false, false, true,
        "EN ISO 6946, surface resistances, external convective coefficient", SourceEvidence.Recalled, NotStated);

    /// <summary>h = 698.24 (0.00144 Tm^0.3 v^0.7 + 0.00097 |Ts − Ta|^0.3), Tm = mean of skin and air in K.</summary>
    public static ConvectionForm Vehrencamp { get; } = new(
        "vehrencamp-1953", "Vehrencamp", "698.24 (0.00144 Tm^0.3 v^0.7 + 0.00097 |Ts − Ta|^0.3), Tm in K", VehrencampCoefficient, true, false, true,
        "Vehrencamp 1953 as in NAP record 14410 p. 34; the exponent 0.7 and factor 1 of the classic form recalled", SourceEvidence.Recalled, NotStated);

    /// <summary>h = 10.79 + 4.192 v, medium rough; contains long-wave.</summary>
    public static ConvectionForm AshraeMediumRough { get; } = new(
        "ashrae-1989", "ASHRAE 1989, medium rough", "10.79 + 4.192 v (long-wave included)", (v, _, _) => 10.79 + (4.192 * v), false, true, true,
        "ASHRAE 1989 roughness curves, in: " + PublicReference, SourceEvidence.SecondHand, "surfaces near air temperature; the long-wave part it holds is too small for a hot mat");

    /// <summary>h = 4.60 v^0.79, forced convection only.</summary>
    public static ConvectionForm Emmel { get; } = new(
        "emmel-2007", "Emmel, flat roof", "4.60 v^0.79", (v, _, _) => 4.60 * Math.Pow(v, 0.79), false, false, false,
        "Emmel 2007, in: " + PublicReference, SourceEvidence.SecondHand, "takes the wind at 10 m; not for calm air: goes to zero with the wind");

    /// <summary>h = 1.509 |Ts − Ta|^(1/3), natural convection over a hot face.</summary>
    public static ConvectionForm Walton { get; } = new(
        "walton-1983", "Walton, hot face up", "9.482 |Ts − Ta|^(1/3) / (7.283 − 1)", (_, ts, ta) => 9.482 / 6.283 * Math.Cbrt(Math.Abs(ts - ta)), true, false, true,
        "Walton 1983 / ASHRAE, in: " + PublicReference, SourceEvidence.SecondHand, "calm air, skin warmer than air; ignores the wind");

    /// <summary>h = √((0.84 |Ts − Ta|^(1/3))² + (3.26 v^0.89)²), smooth glass to windward.</summary>
    public static ConvectionForm SmoothGlass { get; } = new(
        "smooth-glass", "Smooth glass, windward", "√((0.84 |Ts − Ta|^(1/3))² + (3.26 v^0.89)²)",
        (v, ts, ta) => Math.Sqrt(Math.Pow(0.84 * Math.Cbrt(Math.Abs(ts - ta)), 2) + Math.Pow(3.26 * Math.Pow(v, 0.89), 2)), true, false, true,
        PublicReference + ", which prints a second pair of coefficients (2.38, 0.89) elsewhere", SourceEvidence.SecondHand,
        "smooth surfaces; a mat is rough, so it cools too slowly");

    /// <summary>h = rho cp (0.0015 v + 0.0015 dT^(1/3)), rho 1.2041 kg/m³, cp 1012 J/(kg K).</summary>
    public static ConvectionForm RyanHerb { get; } = new(
        "herb-2008", "Ryan and Henderson after Herb", "1.2041 · 1012 (0.0015 v + 0.0015 (Ts − Ta)^(1/3))",
        (v, ts, ta) => 1.2041 * 1012 * 0.0015 * (v + Math.Cbrt(Math.Max(0, ts - ta))), true, false, true,
        "Ryan and Henderson after Herb et al. 2008, in the coefficients of a public road surface model", SourceEvidence.SecondHand,
        "dry air: the virtual temperature difference is taken as Ts − Ta, and as zero where the skin is colder");

    /// <summary>h = rho cp kappa² v/(ln(z/z0m) ln(z/z0h)) for z = 3 m, z0m = 5e-4 m, z0h = 1e-4 m, kappa = 0.41.</summary>
    public static ConvectionForm Jansson { get; } = new(
        "jansson-2006", "Jansson, logarithmic wind profile", "1.2041 · 1012 · 0.41² v/(ln(3/5e-4) ln(3/1e-4))",
        (v, _, _) => 1.2041 * 1012 * 0.41 * 0.41 * v / (Math.Log(3 / 5e-4) * Math.Log(3 / 1e-4)), false, false, false,
        "Jansson and others 2006 for an asphalt road, in the coefficients of a public road surface model (which takes decimal logarithms where the law needs natural ones)",
        SourceEvidence.SecondHand, "takes the wind at 3 m; neutral air; not for calm air: goes to zero with the wind");

    /// <summary>Turbulent plate, Nu = 0.037 Re^0.8 Pr^(1/3), over 3.5 m of mat.</summary>
    public static ConvectionForm TurbulentPlate { get; } = new(
        "turbulent-plate", "Turbulent plate", "Nu = 0.037 Re^0.8 Pr^(1/3), length 3.5 m", (v, _, _) => PlateFlow.Turbulent(v, PlateFlow.Length), false, false, false,
        "texts on heat transfer, mean over a plate", SourceEvidence.Recalled, "smooth plate, Re above 5e5 (2.7 m/s over 3.5 m), evaluated below as well; not for calm air");

    /// <summary>Turbulent plate with Kreith's 0.036.</summary>
    public static ConvectionForm KreithPlate { get; } = new(
        "kreith-plate", "Turbulent plate, Kreith", "Nu = 0.036 Re^0.8 Pr^(1/3), length 3.5 m", (v, _, _) => 0.036 / 0.037 * PlateFlow.Turbulent(v, PlateFlow.Length), false, false, false,
        "Kreith, in ht, an open library of heat transfer (C. Bell)", SourceEvidence.SecondHand, "as the turbulent plate");

    /// <summary>Turbulent plate after Schlichting.</summary>
    public static ConvectionForm SchlichtingPlate { get; } = new(
        "schlichting-plate", "Turbulent plate, Schlichting", "Nu = 0.037 Re^0.8 Pr/(1 + 2.443 Re^−0.1 (Pr^(2/3) − 1)), length 3.5 m", (v, _, _) => PlateFlow.Schlichting(v, PlateFlow.Length), false, false, false,
        "Schlichting, in ht, an open library of heat transfer (C. Bell)", SourceEvidence.SecondHand, "as the turbulent plate");

    /// <summary>Laminar plate, Nu = 0.664 Re^0.5 Pr^(1/3), over 3.5 m of mat.</summary>
    public static ConvectionForm LaminarPlate { get; } = new(
        "laminar-plate", "Laminar plate", "Nu = 0.664 Re^0.5 Pr^(1/3), length 3.5 m", (v, _, _) => PlateFlow.Laminar(v, PlateFlow.Length), false, false, false,
        "texts on heat transfer, in ht, an open library of heat transfer (C. Bell)", SourceEvidence.SecondHand, "smooth plate in still-flowing air, Re below 5e5, evaluated above as well; not for calm air");

    /// <summary>Natural convection over a hot plate, Nu = 0.54 Ra^0.25 up to Ra 1e7, 0.15 Ra^(1/3) above.</summary>
    public static ConvectionForm HotPlateUp { get; } = new(
        "mcadams-hot-plate", "McAdams, hot plate up", "Nu = 0.54 Ra^0.25 (Ra ≤ 1e7), 0.15 Ra^(1/3) above, length 1.75 m (area over perimeter of a long mat)",
        (_, ts, ta) => PlateFlow.HotFaceUp(ts, ta, PlateFlow.Length / 2), true, false, true,
        "McAdams, in ht, an open library of heat transfer (C. Bell)", SourceEvidence.SecondHand, "calm air, skin warmer than air; ignores the wind");

    /// <summary>All forms; the order of the list is that of this page.</summary>
    public static IReadOnlyList<ConvectionForm> All { get; } =
        [Barber, CorlewDickson, NusseltJuerges, McAdams, Iso6946, Vehrencamp, AshraeMediumRough, Emmel, Walton,
            SmoothGlass, RyanHerb, Jansson, TurbulentPlate, KreithPlate, SchlichtingPlate, LaminarPlate, HotPlateUp];

    private static double VehrencampCoefficient(double wind, double skin, double air)
    {
        var mean = (0.5 * (skin + air)) + CoolingPhysics.ZeroCelsius;
        return 698.24 * ((0.00144 * Math.Pow(mean, 0.3) * Math.Pow(wind, 0.7)) + (0.00097 * Math.Pow(Math.Abs(skin - air), 0.3)));
    }
}
