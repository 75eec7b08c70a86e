import type { Command } from './define-command.ts';

/** A word that may come next after these words of a command line. */
interface Candidate {
  readonly after: string;
  readonly word: string;
}

/** A script that teaches bash the commands, their flags, and the words that a flag or an argument may have; elsewhere it completes file names. */
export function bashCompletion(commands: readonly Command[]): string {
  const table = candidatesOf(commands).map(({ after, word }) => `${after}\t${word}`);
  return `# knucklewright completion for bash: source <(knucklewright completion bash)
_knucklewright_words='${table.join('\n')}'
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
