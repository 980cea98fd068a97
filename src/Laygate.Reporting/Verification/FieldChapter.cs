namespace Laygate.Reporting.Verification;

/// <summary>What stands beside the cases: whole plans against a reference, the base below its surface, and what field measurements say and lack.</summary>
internal static class FieldChapter
{
    /// <summary>Markdown with line feeds.</summary>
    public static string Markdown => Text.ReplaceLineEndings("\n");

    private const string Text = """

        ## Whole plans against a reference

        Twenty-five plans go through the public check as text: six in an envelope, nine by the hour, four hot-on-hot pairs (two of them by the hour), six with temperatures stated below the surface of the base. An explicit finite-volume solver of the tests, written from the heat equation and sharing no code with the program, answers the same plans. Each densification window agrees within 0.5 %, and the moment of laying that gives the shortest one is the same. Conductivity, specific heat and density of the mix are read from the working of the finding; those of the base, emissivity, absorptivity and the sky's depression from the catalogue of assumptions; convection is 4 + 4 v. So this compares the physics and the search, not the choice of properties (`tests/Laygate.ConformanceTests/Outside`).

        The search for the worst moment is tried on its own: 2,000 random plans (three to twelve hours whose air, base, wind and sun jump from entry to entry, single courses and pairs) are asked for the whole time of laying and for a random part of it, all else equal. On 2026-11-29, with the search on half the cells and a doubling time of half an hour, no quantity of the mat was milder for the whole by more than 0.5 % in any of them, of about 36,500 answers compared; with 40 minutes three were. `LAYGATE_PLANS=2000 dotnet test tests/Laygate.UnitTests -c Release --filter FullyQualifiedName~CutTimeTests` repeats it; the usual run asks twelve.

        ## The base below its surface

        | what the plan says | what is taken below the surface |
        |---|---|
        | `base_at_depth` of an hour or of the envelope | straight lines between the stated depths, the last one below; between hours the difference from the surface on a straight line, before the first and after the last as there |
        | hours, latitude, an offset from UTC, nothing frozen | what the five days before leave, by the same conduction solver: stated hours as stated, before them an assumed daily swing of the air; the share of a clear sky's sun with which the surface is as warm as stated; what no share explains moves the whole profile, so that the surface always has the stated temperature |
        | neither | as at the surface, with a listed assumption and its range |

        The sign: on a sunny afternoon the base is colder below than on top and takes more heat, so that windows and the time until opening are shorter than with an even base; before sunrise it is warmer below and they are longer. With 45 °C on top and 27 °C at 150 mm the window of 50 mm at 28 °C and 3 m/s is 5 % shorter and the time to a core of 60 °C 21 % (tests). Where a surface was milled or shaded a few hours before laying, the computed difference is too large; its range begins at none of it. Base and air are sampled by ±3 K and ±2 K (judgement).

        Published pavement temperature models are a check, not the source. Diefenderfer, Al-Qadi and Diefenderfer, Model to predict pavement temperature profile, J. Transp. Eng. 132(2), 2006 (abstract read): daily highest and lowest temperatures of a pavement follow those of the air, the depth and the sun; the signs above agree with it. Its coefficients, the tables of Yavuzturk and Ksaibati, Mountain Plains Consortium report 02-136, 2002 (abstract read) and a Minnesota report on pavement temperatures (number 480 of 2006, recalled, not read) were not to be had, so no figure of theirs is compared. The daily wave itself is compared with its closed solution (table above).

        ## Field measurements

        No published measurement was found whose inputs are all known. Nothing here validates the model. The one published curve that can be set beside the model is ter Huerne's line below; the others gave no times. Records of the examples are invented: their differences, and what `laygate measured --learn` takes from them, show how the commands are used and prove nothing.

        | source | how known | what it gives | what it lacks |
        |---|---|---|---|
        | ter Huerne, PhD thesis, University of Twente 2004, appendix I | read | fitted lines of log(T − Tair) over time at mid-depth of about 50 mm; one with slope 0.0095 per minute, R² 0.997, 23.4 min from 100 to 60 K above air | the readings, air, wind, sun, laying temperature, temperature of the base (a fresh course of the same section) |
        | "Determination of in-field temperature variations in fresh HMA", 2019, eight tests on 50 and 80 mm | abstract read | means: laid at 136.9 °C, rolled from 127.8 to 62.9 °C | every time, every single test, air, wind, sun, base |
        | Eaton and Berg, CRREL 1980, ADA095489, six overlay sections in New Hampshire | abstract read | says that computed curves can be accurate predictors | all numbers |
        | Maupin, Virginia 72-R24, 1973 | abstract read | says that field curves agreed with the Corlew and Dickson solution | all numbers |
        | Schwartz and others, FHWA-HRT-14-061, 2014, chapter 6; Pfeiffer, MSc thesis, University of Maryland 2010 | first page read | sensors in paved lifts against theory | tables, figures, weather |
        | Pilate, Belgian Road Research Centre CR 42/06, 2006 | first page read | a model without radiation agreed on most sites, not in strong sun | tables |
        | EPFL 2010, test hall and road H144 | abstract read | probes in hot and warm mix | all numbers |

        With an assumed wind of 2 to 4 m/s, no sun and 50 mm laid 130 K above the air, the model takes 20 to 25 min from 100 to 60 K above air where ter Huerne's line takes 23.4. Wind and base are unknown and alone move the computed time from a quarter less to a third more, so that no bias can be stated.

        ### Why the measured line is straighter than the computed one

        In log scale the computed curve bends more. Straightness R² of the computed mid-depth curve up to 45 min, by when the readings begin (our calculation with 50 mm, 130 K above air, 4 m/s, base as warm as the air, one thing changed at a time; measured 0.997):

        | what is changed | from 3 min | from 5 min | from 10 min | from 15 min | from 20 min | minutes from 100 to 60 K |
        |---|---:|---:|---:|---:|---:|---:|
        | nothing: perfect contact | 0.989 | 0.990 | 0.994 | 0.996 | 0.998 | 20 |
        | contact resistance 0.005 m² K/W | 0.992 | 0.993 | 0.995 | 0.997 | 0.998 | 21 |
        | contact resistance 0.01 m² K/W | 0.994 | 0.995 | 0.996 | 0.998 | 0.999 | 22 |
        | contact resistance 0.02 m² K/W | 0.997 | 0.997 | 0.998 | 0.999 | 0.999 | 24 |
        | loose mat for 10 min (88 % of the density, 85 % of the conductivity) | 0.988 | 0.988 | 0.991 | 0.996 | 0.997 | 20 |
        | a probe that lags by 2 min | 0.990 | 0.990 | 0.993 | 0.996 | 0.997 | 20 |
        | probe 10 mm too deep | 0.990 | 0.993 | 0.996 | 0.998 | 0.999 | 23 |
        | probe 10 mm too high | 0.990 | 0.991 | 0.993 | 0.995 | 0.997 | 18 |
        | base 20 K warmer | 0.986 | 0.988 | 0.992 | 0.995 | 0.997 | 25 |

        So a contact resistance of about 0.02 m² K/W explains it from 3 to 5 min on, and so do readings that begin after 15 to 20 min, without any. The looseness of the first minutes and a warm base do not: they bend the curve more. A lagging probe does not either, and it does not bend it: a probe that follows with a lag τ (τ dTp/dt = T − Tp) turns the straight line A e^(−St) into A e^(−St) / (1 − Sτ), the same slope later by about τ, once the start has died away as e^(−t/τ). So it shows the mat as it was τ ago: with 2 min of lag the readings from 10 min on are as straight as those from 8 min on (0.9939 for both, by a second calculation of ours), and only the first two or three lags, in which the probe still warms up or its start fades, differ. One line with unseen readings cannot tell the two apart. The program keeps perfect contact, which cools faster and is the safe side for a window, not for the time until opening.

        ### What a field test must record

        - Thickness loose and compacted (core); depth of each probe measured on the core.
        - Times from the moment the screed passes, first reading within 1 min.
        - Air temperature and wind at 2 m beside the mat, each minute; sun measured, or date, hour, place and cloud.
        - Material of the base, its dampness, its temperature at the surface, 50 mm and 150 mm down before laying.
        - Mix, density and binder; times of roller passes and of water on the drums.
        - At least two probes at mid-depth, 1 m or more from an edge, and one 5 mm above the base: the last tells contact from wind.

        Judge each reading against low and high of `check`, the difference of the times to 100 °C and to cessation, and the shape at 2, 5, 10, 20 and 40 min.

        """;
}
