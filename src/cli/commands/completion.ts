import { success } from '../../units/result.ts';
import { type Command, defineCommand } from '../define-command.ts';
import { argument } from '../flags/flag.ts';

/** `completion`: what a shell needs to complete commands, flags and their words. */
export function completionOf(all: () => Promise<readonly Command[]>) {
  return defineCommand({
    name: 'completion',
    group: 'What it knows',
    about: 'print a script that lets the shell complete commands, flags and their words: source <(knucklewright completion bash)',
    examples: ['completion bash > ~/.local/share/bash-completion/completions/knucklewright', 'completion fish | source'],
    args: [argument('<shell>', 'the shell').choices(SHELLS)],
    flags: [],
    read: ([shell]) => success(shell),
    make: async (shell) => success(shellCompletion(shell, await all())),
    report: { text: (script) => script },
  });
}

/** A word that may come next after these words of a command line. */
interface Candidate {
  readonly after: string;
  readonly word: string;
}

/** Shells whose completion is known. */
export const SHELLS = ['bash', 'zsh', 'fish', 'powershell'] as const;
export type Shell = (typeof SHELLS)[number];

/**
 * A script that teaches a shell the commands, their flags, and the words that a flag or an argument may have; elsewhere it completes file names. All of them look
 * up one table: what stands before, and what may come next.
 */
export function shellCompletion(shell: Shell, commands: readonly Command[]): string {
  const table = candidatesOf(commands).map(({ after, word }) => `${after}\t${word}`);
  return SCRIPTS[shell](table.join('\n'));
}

const SCRIPTS: Readonly<Record<Shell, (table: string) => string>> = { bash, zsh, fish, powershell };

function bash(table: string): string {
  return `# knucklewright completion for bash: source <(knucklewright completion bash)
_knucklewright_words='${table}'
_knucklewright() {
  local word="\${COMP_WORDS[COMP_CWORD]}" before="\${COMP_WORDS[COMP_CWORD-1]}" path='' count=1
  if [ "$COMP_CWORD" -gt 1 ]; then
    path="\${COMP_WORDS[1]}"
    if [ "$COMP_CWORD" -gt 2 ] && printf '%s\\n' "$_knucklewright_words" | grep -q "^$path \${COMP_WORDS[2]}	"; then
      path="$path \${COMP_WORDS[2]}"
    fi
  fi
  local words="$(printf '%s\\n' "$_knucklewright_words" | awk -F '\\t' -v after="$path $before" '$1 == after { print $2 }')"
  [ -n "$words" ] || words="$(printf '%s\\n' "$_knucklewright_words" | awk -F '\\t' -v after="$path" '$1 == after { print $2 }')"
  COMPREPLY=($(compgen -W "$words" -- "$word"))
}
complete -o default -F _knucklewright knucklewright
`;
}

function zsh(table: string): string {
  return `#compdef knucklewright
# knucklewright completion for zsh: source <(knucklewright completion zsh)
_knucklewright_words='${table}'
_knucklewright() {
  local before="\${words[CURRENT-1]}" path='' line
  local -a found
  if (( CURRENT > 2 )); then
    path="\${words[2]}"
    if (( CURRENT > 3 )) && print -r -- "$_knucklewright_words" | grep -q "^$path \${words[3]}	"; then
      path="$path \${words[3]}"
    fi
  fi
  found=("\${(@f)$(print -r -- "$_knucklewright_words" | awk -F '\\t' -v after="$path $before" '$1 == after { print $2 }')}")
  [[ -n "$found[1]" ]] || found=("\${(@f)$(print -r -- "$_knucklewright_words" | awk -F '\\t' -v after="$path" '$1 == after { print $2 }')}")
  if [[ -n "$found[1]" ]]; then compadd -- $found; fi
  _files
}
compdef _knucklewright knucklewright
`;
}

function fish(table: string): string {
  return `# knucklewright completion for fish: knucklewright completion fish | source
set -g __knucklewright_words '${table}'
function __knucklewright_next
  set -l typed (commandline -opc)
  set -l path ''
  if test (count $typed) -gt 1
    set path $typed[2]
    if test (count $typed) -gt 2; and printf '%s\\n' $__knucklewright_words | string match -q -- "$path $typed[3]	*"
      set path "$path $typed[3]"
    end
  end
  set -l found (printf '%s\\n' $__knucklewright_words | awk -F '\\t' -v after="$path $typed[-1]" '$1 == after { print $2 }')
  test -n "$found"; or set found (printf '%s\\n' $__knucklewright_words | awk -F '\\t' -v after="$path" '$1 == after { print $2 }')
  printf '%s\\n' $found
end
complete -c knucklewright -a '(__knucklewright_next)'
`;
}

function powershell(table: string): string {
  return `# knucklewright completion for PowerShell: knucklewright completion powershell | Out-String | Invoke-Expression
$KnucklewrightWords = @'
${table}
'@ -split "\`n"
Register-ArgumentCompleter -Native -CommandName knucklewright -ScriptBlock {
  param($wordToComplete, $commandAst, $cursorPosition)
  $typed = @($commandAst.CommandElements | ForEach-Object { $_.ToString() })
  if ($wordToComplete -ne '') { $typed = @($typed | Select-Object -SkipLast 1) }
  $path = ''
  if ($typed.Count -gt 1) {
    $path = $typed[1]
    if ($typed.Count -gt 2 -and ($KnucklewrightWords | Where-Object { $_.StartsWith("$path $($typed[2])\`t") })) { $path = "$path $($typed[2])" }
  }
  $next = { param($after) $KnucklewrightWords | Where-Object { $_.TrimEnd().StartsWith("$after\`t") } | ForEach-Object { $_.TrimEnd().Substring($after.Length + 1) } }
  $found = @(& $next "$path $($typed[-1])")
  if ($found.Count -eq 0) { $found = @(& $next $path) }
  $found | Where-Object { $_ -like "$wordToComplete*" } | ForEach-Object { [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_) }
}
`;
}

function candidatesOf(commands: readonly Command[]): readonly Candidate[] {
  const firsts = [...new Set(commands.map(({ name }) => name.split(' ')[0] ?? ''))].map((word) => ({ after: '', word }));
  const others = commands.flatMap(({ name, args, flags }): Candidate[] => {
    const [first = '', second] = name.split(' ');
    const known = flags.flatMap(({ long, argChoices = [] }) =>
      long ? [{ after: name, word: long }, ...argChoices.map((word) => ({ after: `${name} ${long}`, word }))] : [],
    );
    const choices = args.flatMap(({ argChoices = [] }) => argChoices.map((word) => ({ after: name, word })));
    return [...(second === undefined ? [] : [{ after: first, word: second }]), ...choices, ...known];
  });
  return [...firsts, ...others];
}
