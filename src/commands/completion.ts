import { Argument, type Command } from 'commander';

const shells = ['bash', 'zsh', 'fish'] as const;
type Shell = (typeof shells)[number];

/** A command and its options as a completion script needs them. */
interface Offer {
  readonly command: string;
  readonly says: string;
  /** Words that its argument may be; none where it takes files or names. */
  readonly words: readonly string[];
  readonly options: readonly { readonly flag: string; readonly says: string }[];
}

/** `looselead completion SHELL`: prints a script that completes commands and options, made from the commands themselves. */
export function registerCompletion(program: Command): void {
  program
    .command('completion')
    .description('print a script that completes commands and options in your shell')
    .addArgument(new Argument('<shell>', 'the shell').choices(shells))
    .addHelpText(
      'after',
      '\nExample:\n  looselead completion bash > ~/.local/share/bash-completion/completions/looselead\n',
    )
    .action((shell: Shell) => {
      process.stdout.write(completionScript(program, shell));
    });
}

/** The script as text. Files and folders stay completed by the shell itself. */
export function completionScript(program: Command, shell: Shell): string {
  const name = program.name();
  const offers = program.commands.map((command): Offer => ({
    command: command.name(),
    says: command.description(),
    words: command.registeredArguments.flatMap(({ argChoices }) => argChoices ?? []),
    options: command.options.flatMap(({ long, description }) => (long ? [{ flag: long, says: description }] : [])),
  }));
  return { bash, zsh, fish }[shell](name, offers);
}

function bash(name: string, offers: readonly Offer[]): string {
  const cases = offers.map(
    ({ command, options, words }) =>
      `    ${command}) words="${options.map(({ flag }) => flag).join(' ')}" choices="${words.join(' ')}" ;;`,
  );
  return `# bash completion for ${name}
_${name}() {
  local word="\${COMP_WORDS[COMP_CWORD]}" words="" choices=""
  if [ "$COMP_CWORD" -eq 1 ]; then
    COMPREPLY=($(compgen -W "${offers.map(({ command }) => command).join(' ')} --help --version" -- "$word"))
    return
  fi
  case "\${COMP_WORDS[1]}" in
${cases.join('\n')}
  esac
  case "$word" in
    -*) COMPREPLY=($(compgen -W "$words --help" -- "$word")) ;;
    *) COMPREPLY=($(compgen -W "$choices" -- "$word")) ;;
  esac
}
complete -o default -F _${name} ${name}
`;
}

function zsh(name: string, offers: readonly Offer[]): string {
  const commands = offers.map(({ command, says }) => `    ${quoted(`${command}:${says}`)}`);
  const cases = offers.map(({ command, options }) => {
    const specs = options.map(({ flag, says }) => quoted(`${flag}[${says.replace(/[[\]:]/g, ' ')}]`));
    return `    ${command}) _arguments ${[...specs, `'*:file:_files'`].join(' ')} ;;`;
  });
  return `#compdef ${name}
_${name}() {
  local -a commands
  commands=(
${commands.join('\n')}
  )
  if (( CURRENT == 2 )); then
    _describe command commands
    return
  fi
  local command="$words[2]"
  shift words
  (( CURRENT-- ))
  case "$command" in
${cases.join('\n')}
  esac
}
compdef _${name} ${name}
`;
}

function fish(name: string, offers: readonly Offer[]): string {
  const lines = offers.flatMap(({ command, says, options }) => [
    `complete -c ${name} -n __fish_use_subcommand -a ${command} -d ${quoted(says)}`,
    ...options.map(
      ({ flag, says: text }) =>
        `complete -c ${name} -n '__fish_seen_subcommand_from ${command}' -l ${flag.slice(2)} -d ${quoted(text)}`,
    ),
  ]);
  return `# fish completion for ${name}\n${lines.join('\n')}\n`;
}

/** In single quotes, on one line, for all three shells. */
function quoted(text: string): string {
  return `'${text.replace(/\s+/g, ' ').replace(/'/g, '’')}'`;
}
