import { parseArgs } from 'node:util'
import { nearest } from '../read/nearest.ts'
import { buildVerb } from './build.ts'
import { checkVerb } from './check.ts'
import { explainVerb } from './explain.ts'
import { fitVerb } from './fit.ts'
import { previewVerb } from './preview.ts'
import { reviewVerb } from './review.ts'
import { schemaVerb } from './schema.ts'
import { translateVerb } from './translate.ts'
import { EXIT, Misuse, type Console, type Verb } from './verb.ts'

/** Every verb, in the order help lists them. */
export const verbs: readonly Verb[] = [checkVerb, buildVerb, previewVerb, reviewVerb, explainVerb, fitVerb, translateVerb, schemaVerb]

const help = (): string => `rungbook VERB [options]

${verbs.map(({ name, says }) => `  ${name.padEnd(9)} ${says}`).join('\n')}

  rungbook VERB --help says more.
`

/**
 * Runs one command line.
 *
 * Shape   the words after the program's name to an exit code: 0 nothing to put right, 1 findings, 2 wrong usage, 3 our bug.
 */
export async function main(words: readonly string[], console: Console): Promise<number> {
  const [name, ...rest] = words
  if (name === undefined || name === '--help' || name === 'help') {
    console.out(help())
    return name === undefined ? EXIT.usage : EXIT.fine
  }
  const verb = verbs.find((candidate) => candidate.name === name)
  if (!verb) {
    const like = nearest(name, verbs.map((candidate) => candidate.name))
    console.note(`There is no verb "${name}". ${like ? `Did you mean ${like}?` : `The verbs are: ${verbs.map((candidate) => candidate.name).join(', ')}.`}\n`)
    return EXIT.usage
  }
  try {
    return await runVerb(verb, rest, console)
  } catch (error) {
    if (error instanceof Misuse) {
      console.note(`${error.message}\n${verb.usage}\n`)
      return EXIT.usage
    }
    console.note(`This is a mistake of ours, not yours. Please report it with what follows.\n${error instanceof Error ? error.stack : String(error)}\n`)
    return EXIT.bug
  }
}

async function runVerb(verb: Verb, rest: string[], console: Console): Promise<number> {
  const typed = parsed(verb, rest)
  if (typed.options.help) {
    console.out(`${verb.usage}\n\n${verb.says}\n`)
    return EXIT.fine
  }
  return verb.run(typed, console)
}

function parsed(verb: Verb, rest: string[]) {
  try {
    const { values, positionals } = parseArgs({ args: rest, options: { ...verb.options, help: { type: 'boolean' } }, allowPositionals: true, strict: true })
    return { options: values as Record<string, string | boolean | undefined>, rest: positionals }
  } catch (error) {
    const option = /'(-[^' ]*)/.exec(error instanceof Error ? error.message : '')?.[1]
    const like = option && nearest(option, ['--help', ...Object.keys(verb.options).map((known) => `--${known}`)])
    throw new Misuse(option ? `There is no option "${option}" here, or its value is missing.${like ? ` Did you mean ${like}?` : ''}` : 'These options cannot be read.')
  }
}
