namespace Laygate.Engineering.Quantities;

/// <summary>The quantities of this program, one file per kind of element.</summary>
public static class LaygateQuantities
{
    /// <summary>Builds the catalogue.</summary>
    public static QuantityCatalogue Catalogue() => new(
    [
        .. PlanQuantities.All(),
        .. SiteQuantities.All(),
        .. ShiftQuantities.All(),
        .. WeatherQuantities.All(),
        .. ExistingQuantities.All(),
        .. MixQuantities.All(),
        .. CourseQuantities.All(),
        .. CourseSupplyQuantities.All(),
        .. CourseCoolingQuantities.All(),
        .. CourseTimes.All(),
        .. PairQuantities.All(),
        .. PairBuildQuantities.All(),
        .. RunQuantities.All(),
        .. SupplyQuantities.All(),
        .. TruckQuantities.All(),
        .. FeederQuantities.All(),
        .. PaverQuantities.All(),
        .. BufferQuantities.All(),
        .. PhaseQuantities.All(),
        .. RollerQuantities.All(),
        .. RollingTrainQuantities.All(),
        .. BondCoatQuantities.All(),
        .. JointQuantities.All(),
        .. FrictionAndOpeningQuantities.All(),
        .. QualityQuantities.All(),
        .. ControlQuantities.All(),
        .. FitQuantities.All(),
        .. TrialQuantities.All(),
        .. SimulationQuantities.All(),
        .. TemperatureChain.All(),
        .. TimeChain.All(),
        .. NamesAndSignatures.All(),
        .. RunShape.All(),
        .. PlannedStops.All(),
        .. RollingOrder.All(),
        .. PeopleOfThePlan.All(),
        .. DatesOfEvidence.All(),
        .. OtherShifts.All(),
        .. Jobs.JobQuantities.All(),
        .. Values.ValueQuantities.All(),
    ]);
}
