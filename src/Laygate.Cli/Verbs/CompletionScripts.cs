using System.Text;

namespace Laygate.Cli.Verbs;

/// <summary>Writes completion scripts. Names and words are the program's own: letters, digits and dashes, which no shell takes for anything else.</summary>
internal static class CompletionScripts
{
    /// <summary>For bash.</summary>
    public static string Bash(IReadOnlyList<CompletionWords> verbs)
    {
        var text = new StringBuilder("""
            # Completion of laygate for bash.
            _laygate() {
              local word="${COMP_WORDS[COMP_CWORD]}" before="${COMP_WORDS[COMP_CWORD-1]}" verb="${COMP_WORDS[1]}"
              COMPREPLY=()
              if [ "$COMP_CWORD" -eq 1 ]; then

            """);
        text.Append("    COMPREPLY=($(compgen -W \"").AppendJoin(' ', verbs.Select(verb => verb.Name).Append("--version --help")).Append("\" -- \"$word\"))\n    return\n  fi\n  case \"$verb $before\" in\n");
        foreach (var (verb, option) in verbs.SelectMany(verb => verb.Options.Where(option => option.TakesValue).Select(option => (verb, option))))
        {
            var choice = option.Words.Count > 0 ? $"-W \"{string.Join(' ', option.Words)}\"" : "-f";
            text.Append("    \"").Append(verb.Name).Append(' ').Append(option.Name).Append("\") COMPREPLY=($(compgen ").Append(choice).Append(" -- \"$word\")); return ;;\n");
        }

        text.Append("  esac\n  case \"$verb\" in\n");
        foreach (var verb in verbs)
        {
            text.Append("    ").Append(verb.Name).Append(") COMPREPLY=($(compgen -W \"").AppendJoin(' ', verb.Options.Select(option => option.Name)).Append("\" -f -- \"$word\")) ;;\n");
        }

        return text.Append("  esac\n}\ncomplete -o filenames -F _laygate laygate\n").ToString();
    }

    /// <summary>For zsh.</summary>
    public static string Zsh(IReadOnlyList<CompletionWords> verbs)
    {
        var text = new StringBuilder("#compdef laygate\n# Completion of laygate for zsh.\n_laygate() {\n  if (( CURRENT == 2 )); then\n    compadd ");
        text.AppendJoin(' ', verbs.Select(verb => verb.Name).Append("--version --help")).Append("\n    return\n  fi\n  case \"$words[2]\" in\n");
        foreach (var verb in verbs)
        {
            text.Append("    ").Append(verb.Name).Append(") _arguments");
            foreach (var option in verb.Options)
            {
                var value = !option.TakesValue ? string.Empty : option.Words.Count > 0 ? $":value:({string.Join(' ', option.Words)})" : ":value:_files";
                text.Append(" '*").Append(option.Name).Append(value).Append('\'');
            }

            text.Append(" '*:file:_files' ;;\n");
        }

        return text.Append("  esac\n}\n_laygate \"$@\"\n").ToString();
    }

    /// <summary>For fish.</summary>
    public static string Fish(IReadOnlyList<CompletionWords> verbs)
    {
        var text = new StringBuilder("# Completion of laygate for fish.\ncomplete -c laygate -n __fish_use_subcommand -f -a '");
        text.AppendJoin(' ', verbs.Select(verb => verb.Name)).Append("'\n");
        foreach (var (verb, option) in verbs.SelectMany(verb => verb.Options.Select(option => (verb, option))))
        {
            text.Append("complete -c laygate -n '__fish_seen_subcommand_from ").Append(verb.Name).Append("' -l ").Append(option.Name.TrimStart('-'));
            text.Append(!option.TakesValue ? string.Empty : option.Words.Count > 0 ? $" -x -a '{string.Join(' ', option.Words)}'" : " -r").Append('\n');
        }

        return text.ToString();
    }
}
