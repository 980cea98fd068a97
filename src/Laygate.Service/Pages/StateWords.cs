using Laygate.Register;

namespace Laygate.Service.Pages;

/// <summary>States, decisions and events in words.</summary>
internal static class StateWords
{
    public static string Of(SubmissionState state) => state switch
    {
        SubmissionState.Received => "received",
        SubmissionState.Screening => "being screened",
        SubmissionState.Screened => "screened",
        SubmissionState.FailedToRead => "could not be read",
        SubmissionState.NotScreened => "could not be screened",
        SubmissionState.Accepted => "accepted",
        SubmissionState.Returned => "returned",
        _ => "accepted with departures",
    };

    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Accepted => "Accept",
        Verdict.Returned => "Return",
        _ => "Accept with departures",
    };

    public static string Of(RegisterEvent what) => what switch
    {
        RegisterEvent.Received => "received",
        RegisterEvent.Claimed => "screening begun",
        RegisterEvent.HandedBack => "screening interrupted",
        RegisterEvent.AttemptFailed => "an attempt to screen it failed",
        RegisterEvent.Screened => "screened",
        RegisterEvent.FailedToRead => "could not be read",
        RegisterEvent.NotScreened => "could not be screened",
        RegisterEvent.ScreeningAsked => "screening asked for again",
        RegisterEvent.Accepted => "accepted",
        RegisterEvent.Returned => "returned",
        RegisterEvent.AcceptedWithDepartures => "accepted with departures",
        RegisterEvent.FirstAccepted => "accepted by the first of two reviewers",
        RegisterEvent.FirstAcceptedWithDepartures => "accepted with departures by the first of two reviewers",
        RegisterEvent.Taken => "taken by a reviewer",
        RegisterEvent.Commented => "written on",
        RegisterEvent.Recorded => "record of the shift handed in",
        RegisterEvent.NamesReplaced => "names replaced",
        RegisterEvent.ReplacementAsked => "had names replaced",
        RegisterEvent.Released => "given back to the queue",
        _ => "a later revision was submitted",
    };
}
