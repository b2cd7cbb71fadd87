import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { handbookSchema } from '../ladder/schema.ts'
import { tableText } from '../read/write-table.ts'
import { installedFrom } from '../site/installed-from.ts'
import { unfitStart, writeFolder } from '../site/new-folder.ts'
import type { SiteFile } from '../site/site-file.ts'
import { templateLadder } from './export-template.ts'
import { ask, type Question } from './question.ts'
import { EXIT, Misuse, type Console, type Typed } from './verb.ts'

/** What is asked of a new handbook, each with the option that answers it. */
const { organisation, languages, units, colours, contact } = handbookSchema.shape

type Fits = { safeParse(value: unknown): { readonly success: boolean; readonly error?: { readonly issues: readonly { readonly message: string }[] } } }

/** Holds an answer to what handbook.yaml may hold, and says in its own words why it may not. */
const fitting = (key: string, schema: Fits, within: (answer: string) => unknown = (answer) => answer): Question<string>['read'] => (answer) => {
  const { success, error } = schema.safeParse(within(answer))
  return success ? { value: answer } : { wrong: (error?.issues[0]?.message ?? '').replaceAll('{key}', key) }
}

const QUESTIONS = [
  { option: 'organisation', asks: 'Organisation', read: fitting('Organisation', organisation) },
  { option: 'language', asks: 'Language of your files, such as en or es', unless: 'en', read: fitting('Language', languages, (answer) => [answer]) },
  { option: 'units', asks: 'Units, metric or imperial', unless: 'metric', read: fitting('Units', units) },
  { option: 'accent', asks: 'Colour', unless: '#0b5563', read: fitting('Colour', colours, (accent) => ({ accent })) },
  { option: 'contact', asks: 'Whom a reader asks', unless: 'The coach who gave you this handbook', read: fitting('Contact', contact) },
] as const

type Answers = Readonly<Record<(typeof QUESTIONS)[number]['option'], string>>

/** Options that answer the questions beforehand. */
export const workspaceAnswers = { organisation: { type: 'string' }, language: { type: 'string' }, units: { type: 'string' }, accent: { type: 'string' }, contact: { type: 'string' }, yes: { type: 'boolean' } } as const

/** Begins a workspace in a folder that is absent or empty: all of it, or nothing. */
export async function startWorkspace(name: string, typed: Typed, console: Console): Promise<number> {
  const folder = path.resolve(console.folder, name)
  const unfit = await unfitStart(folder)
  if (unfit) throw new Misuse(unfit)
  const answers = await answered(folder, typed, console)
  const files = await workspaceFiles(folder, answers)
  await writeFolder(folder, files)
  const here = path.relative(console.folder, folder)
  console.out(`${here || 'this folder'}: ${files.length} files\n\nNext\n${nextSteps(here).map((step, index) => `  ${index + 1}  ${step}\n`).join('')}`)
  return EXIT.fine
}

const nextSteps = (here: string): string[] => {
  const into = here === '' ? '' : `cd ${/^[\w./-]+$/.test(here) ? here : JSON.stringify(here)} && `
  return [`${into}npm install --ignore-scripts`, 'npx rungbook preview   and open its address: your handbook, with one ladder of your own', 'npx rungbook start ladder ID   adds a ladder by questions; npx rungbook check says what it still lacks']
}

/** What was given by options; the rest is asked on a terminal, or taken as it is with --yes. */
async function answered(folder: string, { options }: Typed, { asked, note }: Console): Promise<Answers> {
  const answers: Record<string, string> = {}
  const willing = options.yes !== true
  if (willing && !asked?.terminal && QUESTIONS.some((question) => options[question.option] === undefined && !('unless' in question))) throw new Misuse('There is nobody here to ask. Give --organisation NAME, or --yes to take what is usual.')
  for (const question of QUESTIONS) {
    const given = options[question.option]
    const unless = question.option === 'organisation' ? (willing ? undefined : named(folder)) : question.unless
    if (typeof given !== 'string' && willing && asked?.terminal) answers[question.option] = await ask<string>({ ...question, ...(unless === undefined ? {} : { unless }) }, asked, note)
    else {
      const outcome = question.read(typeof given === 'string' ? given : (unless ?? ''))
      if ('wrong' in outcome) throw new Misuse(`--${question.option}: ${outcome.wrong}`)
      answers[question.option] = outcome.value
    }
  }
  return answers as Answers // every question has been answered above
}

/** "tarnwick-gym" as a name: "Tarnwick gym". */
const named = (folder: string): string => {
  const words = path.basename(folder).replace(/[^\p{L}\p{N}]+/gu, ' ').trim()
  return words === '' ? 'Our organisation' : words.charAt(0).toUpperCase() + words.slice(1, 100)
}

/** Where each template goes. A dot in front is left out here, for packages leave such files out. */
const TEMPLATES = [
  ['handbook.yaml', 'handbook.yaml'],
  ['goblet-squat.md', 'ladders/goblet-squat.md'],
  ['press-up.md', 'ladders/press-up.md'],
  ['welcome.md', 'content/welcome.md'],
  ['README.md', 'README.md'],
  ['curriculum.yml', '.github/workflows/curriculum.yml'],
  ['vscode-settings.json', '.vscode/settings.json'],
  ['vscode-tasks.json', '.vscode/tasks.json'],
  ['editorconfig', '.editorconfig'],
  ['gitignore', '.gitignore'],
] as const

async function workspaceFiles(folder: string, answers: Answers): Promise<SiteFile[]> {
  const holes: Readonly<Record<string, string>> = {
    organisation: JSON.stringify(answers.organisation),
    language: answers.language,
    units: answers.units,
    accent: JSON.stringify(answers.accent),
    contact: JSON.stringify(answers.contact),
    year: String(new Date().getFullYear()),
  }
  const files = await Promise.all(
    TEMPLATES.map(async ([template, name]) => {
      const text = await readFile(new URL(`./workspace/${template}`, import.meta.url), 'utf8')
      return { name, bytes: template === 'handbook.yaml' ? text.replace(/\{\{(\w+)\}\}/g, (_, hole: string) => holes[hole] ?? '') : text }
    }),
  )
  const { name, wants } = await installedFrom(folder)
  const verbs = ['check', 'build', 'preview'].map((verb) => [verb, `rungbook ${verb}`])
  const about = { name: 'coaching-handbook', version: '0.0.0', private: true, scripts: Object.fromEntries(verbs) as Record<string, string>, dependencies: { [name]: wants } }
  return [...files, { name: 'template.csv', bytes: tableText([templateLadder()], true) }, { name: 'package.json', bytes: `${JSON.stringify(about, null, 2)}\n` }]
}
