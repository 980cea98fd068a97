namespace Laygate.Cli.Arguments;

/// <summary>Help in plain words.</summary>
internal static class HelpText
{
    /// <summary>Help for the program.</summary>
    public const string Program = """
        Laygate reads a job plan for laying hot asphalt and checks it before the shift.

        Usage
          laygate check FILES… [options]    check plans
          laygate sheet PLAN [options]      make the site sheet of a plan
          laygate verify [FILES…]           compare the computation with published results
          laygate rules [options]           list rules, print the merged book, run their cases
          laygate explain RULE|KEY          show one rule, or one key of a plan, in full
          laygate schema [NAME]             print a schema, or list them
          laygate expand PLAN               print a plan with the parts that it uses written out
          laygate import KIND FILE          write a list from outside as YAML: weather, trucks …
          laygate record PLAN --into FOLDER lay out the record of a shift
          laygate ledger PLAN RECORD        what was laid so far, and what is left
          laygate onward PLAN RECORD        plan the rest of the shift anew
          laygate measured PLAN RECORD …    temperatures of the mat, measured against computed
          laygate lots PLAN [RECORD]        draw random places, judge lots by a scheme
          laygate held PLAN RECORD          which limits were held in the shift
          laygate trial PLAN RECORD         what a trial length proves for the plan
          laygate new KIND NAME             begin a plan, specification, rule or departure
          laygate confirm RULE [options]    record that a limit was looked up
          laygate compare OLD NEW           show what changed between two states of a plan
          laygate baseline FILES…           record the findings of today as known
          laygate completion SHELL          print a script for completion in a shell
          laygate --version                 show the version and the editions of the rules

        `laygate COMMAND --help` says how each one works.

        Example
          laygate check plan.yaml

        """;

    /// <summary>Help for site sheets.</summary>
    public const string Sheet = """
        Makes the site sheet of a plan: one short card for each role.

        Usage
          laygate sheet PLAN [options]

        A plan that fails gets no sheet: the reasons are shown instead. `-` reads standard
        input. A job of several shifts gets a sheet for each shift.

        Options
          --rules NAME|PATH      add a specification, as for `laygate check`
          --draft                make a draft, also of a plan that fails; every card is
                                 marked DRAFT
          --shift ID             only this shift of a job
          --format FORMAT        markdown (usual), or html: cards for print, one side of A5
                                 each, black on white
          --language LANGUAGE    language of the cards: en (usual) or de
          --output FILE          write the sheet to a file
          --date YYYY-MM-DD      day of checking; usually today
          --help                 show this

        Exit codes
          0  the sheet was made
          1  the plan fails: no sheet
          2  input, arguments or rules could not be read
          3  an error of the program itself

        Example
          laygate sheet plan.yaml --output plan-sheet.md

        Site conditions and the competent person come first.

        """;

    /// <summary>Help for checking.</summary>
    public const string Check = """
        Checks job plans and shows what would go wrong, worst first.

        Usage
          laygate check FILES… [options]

        FILES are plans in YAML. Patterns such as 'jobs/*.yaml' and 'jobs/**/*.yaml' work
        in every shell. `-` reads standard input. A name that begins with `-` follows `--`.
        Without FILES the plans are checked that the nearest `laygate.yaml` names.

        Options
          --rules NAME|PATH      add a specification: one that is shipped, or a file or
                                 folder of your own; repeat it for more than one
          --departures FILE      departures that the approving side permits; repeat it for
                                 more than one file
          --stage STAGE          judge at concept, submission or release, or at the plan's
                                 own stage if that is later
          --fail-on KIND         exit with 1 on: fail (usual), warn (also warnings and
                                 what is not assessed), none (never)
          --format FORMAT        console (usual), json, sarif, junit, code-quality,
                                 annotations, markdown or html
          --output FILE          write the result to a file
          --output FORMAT=FILE   also write the result in another form; repeat it for more
          --include PART         list more in sarif, code-quality and annotations than what
                                 fails and warns: not-assessed, needs-person, open,
                                 departed, passed or not-applicable; repeat it for more
          --date YYYY-MM-DD      day of checking; usually today
          --changed-since REV    check only plans that differ from a git revision; all of
                                 them where rules, settings, departures or baseline differ
          --previous FILE|REV    list in html and markdown what has changed since an
                                 earlier file, or since a git revision
          --baseline FILE        findings known earlier, written by `laygate baseline`: they
                                 are shown, but only new or worse ones count
          --outlook              also judge laying hour by hour, or, without hours, say in
                                 which weather the plan still works
          --quick                leave out spread, simulated shifts and remedies; for
                                 drafting, not to rely on
          --explain RULE[@ADDRESS]
                                 show only the findings of one rule, in full
          --full                 show every finding in full, not in two lines
          --all                  the same, with every pass and every assumption
          --stdin-name NAME      name to show for standard input
          --help                 show this

        Exit codes
          0  nothing at or above --fail-on
          1  findings at or above --fail-on
          2  input, arguments or rules could not be read
          3  an error of the program itself

        Example
          laygate check jobs/*.yaml --stage release --fail-on warn

        A `laygate.yaml` in the folder of a plan, or above it, may name rules, departures, a
        stage and `fail_on: warn`; the stricter of it and the command holds.

        A check is no approval: local codes and the competent person come first.

        """;

    /// <summary>Help for verifying.</summary>
    public const string Verify = """
        Runs verification cases: what the program computes, beside published results,
        exact solutions and worked examples. There is no setting that `check` has not.

        Usage
          laygate verify [FILES…] [--format console|json|markdown]

        Without FILES the cases that ship with the program are run.

        Exit codes
          0  every check is within its tolerance
          1  a check is off
          2  a file could not be read

        """;
}
