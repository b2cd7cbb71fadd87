import { EXIT, Misuse, type Verb } from './verb.ts'

/** What one verb offers to whoever presses Tab. */
type Offer = { readonly verb: string; readonly says: string; readonly options: readonly string[]; readonly values: readonly (readonly [option: string, values: readonly string[]])[] }

/** Options that name a folder. */
const FOLDERS = ['--workspace', '--output']

/** `rungbook completion`: a script by which a shell completes verbs, options and what they may be. */
export const completionVerb = (verbs: () => readonly Verb[]): Verb => ({
  name: 'completion',
  says: 'writes a script by which a shell completes verbs, options and their values',
  usage: `rungbook completion ${Object.keys(SHELLS).join('|')}`,
  examples: ['rungbook completion bash >> ~/.bashrc', 'rungbook completion zsh > ~/.zfunc/_rungbook', 'rungbook completion fish > ~/.config/fish/completions/rungbook.fish'],
  options: {},
  choices: { '': Object.keys(SHELLS) },

  async run({ rest: [shell, ...more] }, console) {
    const script = shell === undefined || more.length > 0 || !Object.hasOwn(SHELLS, shell) ? undefined : SHELLS[shell]
    if (!script) throw new Misuse(`Name a shell: ${Object.keys(SHELLS).join(', ')}.`)
    console.out(script(verbs().map(offerOf)))
    return EXIT.fine
  },
})

const offerOf = ({ name, says, options, choices = {} }: Verb): Offer => ({
  verb: name,
  says,
  options: [...Object.keys(options), 'help'].map((option) => `--${option}`),
  values: Object.entries(choices).map(([option, values]) => [option === '' ? '' : `--${option}`, values]),
})

const quoted = (text: string): string => `'${text.replaceAll("'", "'\\''")}'`

/** The values after an option, then the words of a verb, as branches of a case that ends in what is offered otherwise. */
const branches = (offers: readonly Offer[], offered: (words: readonly string[]) => string): string =>
  [
    ...offers.flatMap(({ verb, values }) => values.filter(([option]) => option !== '').map(([option, words]) => `    ${quoted(`${verb} ${option}`)}) ${offered(words)} ;;`)),
    ...offers.map(({ verb, options, values }) => `    ${quoted(`${verb} `)}*) ${offered([...values.filter(([option]) => option === '').flatMap(([, words]) => words), ...options])} ;;`),
  ].join('\n')

const folders = (): string => FOLDERS.map((option) => `*' ${option}'`).join('|')

const bash = (offers: readonly Offer[]): string => `# How bash completes rungbook: add this to ~/.bashrc
_rungbook() {
  local word="\${COMP_WORDS[COMP_CWORD]}" words=
  COMPREPLY=()
  if [ "$COMP_CWORD" -eq 1 ]; then words=${quoted([...offers.map(({ verb }) => verb), '--help', '--version'].join(' '))}
  else case "\${COMP_WORDS[1]} \${COMP_WORDS[COMP_CWORD-1]}" in
    ${folders()}) COMPREPLY=($(compgen -d -- "$word")); return ;;
${branches(offers, (words) => `words=${quoted(words.join(' '))}`)}
  esac; fi
  COMPREPLY=($(compgen -W "$words" -- "$word"))
}
complete -o default -F _rungbook rungbook
`

const zsh = (offers: readonly Offer[]): string => `#compdef rungbook
# How zsh completes rungbook: put this in a folder of your fpath as _rungbook, or source it after compinit
_rungbook() {
  local -a verbs
  verbs=(${offers.map(({ verb, says }) => quoted(`${verb}:${says.replaceAll(':', '\\:')}`)).join(' ')})
  if (( CURRENT == 2 )); then _describe verb verbs; compadd -- --help --version
  else case "\${words[2]} \${words[CURRENT-1]}" in
    ${folders()}) _files -/ ;;
${branches(offers, (words) => `compadd -- ${words.map(quoted).join(' ')}; _files`)}
  esac; fi
}
if [[ "\${funcstack[1]}" == _rungbook ]]; then _rungbook "$@"; else compdef _rungbook rungbook; fi
`

const fish = (offers: readonly Offer[]): string => {
  const line = (...words: readonly string[]): string => `complete -c rungbook ${words.join(' ')}`
  const lines = offers.flatMap(({ verb, says, options, values }) => {
    const within = quoted(`__fish_seen_subcommand_from ${verb}`)
    const given = new Map(values)
    const after = (option: string): string => {
      const known = given.get(option)
      return known ? ` -x -a ${quoted(known.join(' '))}` : FOLDERS.includes(option) ? ` -x -a '(__fish_complete_directories)'` : ''
    }
    const own = given.get('')
    return [
      line('-n', '__fish_use_subcommand', '-f', '-a', verb, '-d', quoted(says)),
      ...(own ? [line('-n', within, '-a', quoted(own.join(' ')))] : []),
      ...options.map((option) => line('-n', within, '-l', option.slice(2) + after(option))),
    ]
  })
  return `# How fish completes rungbook: put this in ~/.config/fish/completions/rungbook.fish\n${lines.join('\n')}\n`
}

const SHELLS: Readonly<Record<string, (offers: readonly Offer[]) => string>> = { bash, zsh, fish }
