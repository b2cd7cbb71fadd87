import { readFile } from 'node:fs/promises'
import { parseArgs } from 'node:util'
import { nearest } from '../read/nearest.ts'
import { buildVerb } from './build.ts'
import { checkVerb } from './check.ts'
import { completionVerb } from './completion.ts'
import { editorVerb } from './editor.ts'
import { explainVerb } from './explain.ts'
import { exportVerb } from './export.ts'
import { fitVerb } from './fit.ts'
import { help, helpOf } from './help.ts'
import { importVerb } from './import.ts'
import { previewVerb } from './preview.ts'
import { reviewVerb } from './review.ts'
import { schemaVerb } from './schema.ts'
import { startVerb } from './start.ts'
import { refusedBy } from './refused.ts'
import { translateVerb } from './translate.ts'
import { EXIT, Misuse, type Console, type Verb } from './verb.ts'

/** Every verb, in the order help lists them. */
export const verbs: readonly Verb[] = [startVerb, checkVerb, buildVerb, previewVerb, reviewVerb, explainVerb, fitVerb, translateVerb, importVerb, exportVerb, schemaVerb, editorVerb, completionVerb(() => verbs)]

/**
 * Runs one command line.
 *
 * Shape   the words after the program's name to an exit code: 0 nothing to put right, 1 findings, 2 wrong usage, 3 our bug.
 */
export async function main(words: readonly string[], console: Console): Promise<number> {
  const [name, ...rest] = words
  if (name === undefined || name === '--help' || name === '-h') {
    console.out(help(verbs))
    return name === undefined ? EXIT.usage : EXIT.fine
  }
  if (name === '--version') {
    console.out(`${await version()}\n`)
    return EXIT.fine
  }
  try {
    if (name !== 'help') return await runVerb(verbNamed(name), rest, console)
    console.out(rest[0] === undefined ? help(verbs) : helpOf(verbNamed(rest[0])))
    return EXIT.fine
  } catch (error) {
    const refused = error instanceof Misuse ? error.message : refusedBy(error)
    console.note(refused === undefined ? `This is a mistake of ours, not yours. Please report it with what follows.\n${error instanceof Error ? error.stack : String(error)}\n` : `${refused}\n`)
    return refused === undefined ? EXIT.bug : EXIT.usage
  }
}

/** The version of this program, as its package says. */
async function version(): Promise<string> {
  const { version: own } = JSON.parse(await readFile(new URL('../../package.json', import.meta.url), 'utf8')) as { version: string }
  return own
}

function verbNamed(name: string): Verb {
  const verb = verbs.find((candidate) => candidate.name === name)
  if (verb) return verb
  const names = verbs.map((candidate) => candidate.name)
  const like = nearest(name, names)
  throw new Misuse(`There is no verb "${name}". ${like ? `Did you mean ${like}?` : `The verbs are: ${names.join(', ')}.`}`)
}

async function runVerb(verb: Verb, rest: readonly string[], console: Console): Promise<number> {
  try {
    const typed = parsed(verb, rest)
    if (typed.options.help) {
      console.out(helpOf(verb))
      return EXIT.fine
    }
    return await verb.run(typed, console)
  } catch (error) {
    throw error instanceof Misuse ? new Misuse(`${error.message}\n${verb.usage.split('\n\n')[0]}`) : error
  }
}

/** Reads options and words, or says which of them is the slip. */
function parsed(verb: Verb, rest: readonly string[]) {
  const options: Verb['options'] = { ...verb.options, help: { type: 'boolean', short: 'h' } }
  const { values, positionals, tokens } = parseArgs({ args: [...rest], options, allowPositionals: true, strict: false, tokens: true })
  for (const token of tokens) {
    if (token.kind !== 'option') continue
    const known = Object.hasOwn(options, token.name) ? options[token.name] : undefined
    if (!known) throw new Misuse(unknown(token.rawName, Object.keys(options)))
    if (known.type === 'string' && (token.value === undefined || (!token.inlineValue && /^-./.test(token.value)))) throw new Misuse(`${token.rawName} needs a value after it.`)
    if (known.type === 'boolean' && token.value !== undefined) throw new Misuse(`${token.rawName} takes no value; write it alone.`)
  }
  const [word] = positionals
  if (verb.alone && word !== undefined) throw new Misuse(`${verb.name} takes options only, not "${word}".${'workspace' in options ? ` A folder is named with --workspace ${word}.` : ''}`)
  return { options: values as Record<string, string | boolean | undefined>, rest: positionals }
}

function unknown(typed: string, names: readonly string[]): string {
  const known = names.map((name) => `--${name}`)
  const like = nearest(typed, known)
  return `There is no option "${typed}" here. ${like ? `Did you mean ${like}?` : `The options are: ${known.join(', ')}.`}`
}
