namespace Laygate.Engineering.Formulas;

/// <summary>Names of the publications that formulas and assumptions cite, so that one publication has one spelling.</summary>
public static class Sources
{
    /// <summary>The definition of the quantity.</summary>
    public const string Definition = "definition of the quantity";

    /// <summary>Plain kinematics or a mass balance, derived here.</summary>
    public const string Balance = "mass balance and kinematics, derived here";

    /// <summary>Work tip on paving speed.</summary>
    public const string WorkTip31 = "AAPA, Work Tip 31 \"Asphalt paving speed\", November 2001 (read)";

    /// <summary>US Navy manual, equipment operator.</summary>
    public const string Navedtra14080 = "US Navy, NAVEDTRA 14080 Equipment Operator, p. 8-31 \"Compute bituminous material\" (read)";

    /// <summary>US Navy manual, equipment operator, advanced.</summary>
    public const string Navedtra14081 = "US Navy, NAVEDTRA 14081, figure 11-52 and text (read)";

    /// <summary>Handbook page on planning the delivery.</summary>
    public const string Napa62 = "NAPA, asphalt pavement handbook online, 6.2 Planning (rounding rule, units and silo rule read; algebra derived)";

    /// <summary>Relations for two mixes through one feeder.</summary>
    public const string TwoMixes = "derived here from the timing of changeover, exchange and feeding: a worst-case bound";

    /// <summary>Strips of a roller.</summary>
    public const string Strips =
        "closed form derived here from the published worked rule of overhang and overlap (trade article, recalled); edge by edge";

    /// <summary>Rollers by tonnage, an old specification.</summary>
    public const string Kentucky157 = "Kentucky 1956 specification, article 4.3.5-D-1, as given in the abstract of research report 157 (second-hand)";

    /// <summary>Wind at lower height and in other terrain.</summary>
    public const string WindProfile = "ASHRAE Handbook Fundamentals 2005, as given in the EnergyPlus Engineering Reference (NREL) (second-hand)";

    /// <summary>Judgement of this project.</summary>
    public const string Judgement = "engineering judgement of this project";
}
