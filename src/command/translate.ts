import path from 'node:path'
import type { Curriculum, Ladder, Page } from '../ladder/curriculum.ts'
import { placeOf } from '../ladder/finding.ts'
import type { Translated } from '../ladder/translation.ts'
import { ladderToTranslate, openParts, pageToTranslate, STATE } from '../read/begin-translation.ts'
import { MOST_KEYS } from '../read/bounds.ts'
import { nearest } from '../read/nearest.ts'
import { readCurriculum } from '../read/read-curriculum.ts'
import { languageIn } from '../read/read-translation.ts'
import { wordSeal } from '../read/seal-words.ts'
import { readWorkspace } from '../site/disk.ts'
import { sealWords, writeNew } from '../site/write-words.ts'
import { folderOf, workspaceOption } from './curriculum.ts'
import { forTerminal } from './report-text.ts'
import { EXIT, Misuse, type Console, type Verb } from './verb.ts'

/** The name by which words shared by all are begun. */
const WORDS = 'words'

/** `rungbook translate`: a handbook in another language. */
export const translateVerb: Verb = {
  name: 'translate',
  says: 'lists what another language lacks, writes a file to translate, and seals what was translated',
  usage: `rungbook translate [LANG] [--workspace DIR]
rungbook translate LANG LADDER|PAGE|${WORDS} [--workspace DIR]
rungbook translate LANG [LADDER|PAGE] --seal [--workspace DIR]

  LANG          lists what is missing or stale in that language; without it, in each
  LADDER|PAGE   writes a file to begin from, with the original's words to be written over
  ${WORDS}         the same for words shared by all: equipment, movements, titles
  --seal        signs, after you have read it, that each part says what the original says now`,
  examples: ['rungbook translate', 'rungbook translate es press-up', 'rungbook translate es press-up --seal'],
  options: { ...workspaceOption, seal: { type: 'boolean' } },

  async run(typed, console) {
    const [language, id, ...more] = typed.rest
    if (more.length > 0) throw new Misuse('Name one language, and at most one ladder or page.')
    const folder = await folderOf(typed, console)
    console.progress('reading the ladders')
    const workspace = await readWorkspace(folder)
    const { value: curriculum, findings } = workspace.layers.length === 0 ? { findings: [] } : readCurriculum(workspace.layers)
    for (const { file, line, message } of [...workspace.findings, ...findings].filter((found) => !curriculum || languageIn(found.file) !== undefined)) console.note(`${forTerminal(`${file}:${line} ${message}`)}\n`)
    if (!curriculum) return EXIT.findings
    const others = [...new Set(curriculum.handbook.languages)].slice(1)
    if (language !== undefined && !others.includes(language)) throw new Misuse(`"${language}" is not a language to translate into. ${others.length > 0 ? `handbook.yaml lists: ${others.join(', ')}.` : `Add it to handbook.yaml: languages: [${curriculum.handbook.languages.join(', ')}, ${language}].`}`)
    if (language === undefined) {
      if (typed.options.seal === true) throw new Misuse('Name the language that is sealed.')
      if (others.length === 0) console.out('This handbook has one language. Add another to languages in handbook.yaml.\n')
      return Math.max(EXIT.fine, ...others.map((other) => listed(curriculum, other, console)))
    }
    if (typed.options.seal === true) return sealed(curriculum, language, id, folder, console)
    return id === undefined ? listed(curriculum, language, console) : begun(curriculum, language, id, folder, console)
  },
}

const inOne = ({ translations = [] }: Ladder | Page, language: string): Translated => {
  const found = translations.find((one) => one.language === language)
  if (!found) throw new Error(`bug: nothing was read in ${language}`)
  return found
}

const all = ({ ladders, pages }: Curriculum): readonly (Ladder | Page)[] => [...ladders, ...pages]

/** What is open in one language, a line for each ladder and page. */
function listed(curriculum: Curriculum, language: string, console: Console): number {
  const lines = all(curriculum).flatMap((one) => {
    const translated = inOne(one, language)
    const open = openParts(translated)
    const what = translated.there ? open.map((part) => `${part.name} (${STATE(part)})`).join(', ') : 'not begun'
    return open.length === 0 ? [] : [`  ${one.id}  ${what}`]
  })
  const words = unwordedIn(curriculum, language)
  const done = all(curriculum).length - lines.length
  console.out(`${language}: ${done} of ${all(curriculum).length} ladders and pages say all that the original says\n${lines.map((line) => `${forTerminal(line)}\n`).join('')}`)
  if (words.length > 0) console.out(`  words.${language}.yaml  ${forTerminal(words.join(', '))}\n`)
  return lines.length + words.length > 0 ? EXIT.findings : EXIT.fine
}

const unwordedIn = (curriculum: Curriculum, language: string): string[] => [...new Set(curriculum.ladders.flatMap((ladder) => inOne(ladder, language).unworded))]

function named(curriculum: Curriculum, id: string): Ladder | Page {
  const found = all(curriculum).find((one) => one.id === id)
  if (found) return found
  const like = nearest(id, all(curriculum).map((one) => one.id))
  throw new Misuse(`There is no ladder or page "${id}" here that can be read.${like ? ` Did you mean ${like}?` : ''}`)
}

/** Writes a file to begin from, beside the original where that is this workspace's; never over one that is there. */
async function begun(curriculum: Curriculum, language: string, id: string, folder: string, console: Console): Promise<number> {
  const isWords = id === WORDS && !all(curriculum).some((one) => one.id === id)
  const { file, text } = isWords ? wordsToBegin(curriculum, language) : fileToBegin(named(curriculum, id), language, curriculum.handbook.organisation, folder)
  if (text === undefined) console.out(`Nothing of "${id}" is left to translate into ${language}.\n`)
  else if (await writeNew(folder, file, text)) console.out(`${file}: write over the words in it, then: rungbook translate ${language}${isWords ? '' : ` ${id} --seal`}\n`)
  else throw new Misuse(`${file} is there already, and is left as it is.`)
  return EXIT.fine
}

type Begun = { readonly file: string; readonly text: string | undefined }

function wordsToBegin(curriculum: Curriculum, language: string): Begun {
  const { title } = curriculum.handbook
  const words = [...unwordedIn(curriculum, language), ...(curriculum.words?.get(language)?.has(title) ? [] : [title])]
  return { file: `words.${language}.yaml`, text: words.length === 0 ? undefined : `# Take away the # before a line when its words are written.\n${words.map((phrase) => `# ${JSON.stringify(phrase)}: \n`).join('')}` }
}

function fileToBegin(one: Ladder | Page, language: string, organisation: string, folder: string): Begun {
  const translated = inOne(one, language)
  const open = openParts(translated)
  const isLadder = 'rungs' in one
  const beside = placeOf(one.places, isLadder ? ['id'] : []).file
  const isOurs = path.resolve(folder, beside).startsWith(folder + path.sep)
  const file = translated.own?.file ?? `${isOurs ? beside.slice(0, beside.lastIndexOf('/')) : isLadder ? 'ladders' : 'content'}/${isLadder || !isOurs ? one.id : beside.slice(beside.lastIndexOf('/') + 1, -'.md'.length)}.${language}.md`
  return { file, text: open.length === 0 ? undefined : isLadder ? ladderToTranslate(one, open, organisation) : pageToTranslate(one, open) }
}

/** Writes into each of this workspace's translations the digests of what it was made from; says what could not be signed for. */
async function sealed(curriculum: Curriculum, language: string, id: string | undefined, folder: string, console: Console): Promise<number> {
  const ones = id === undefined ? all(curriculum) : [named(curriculum, id)]
  let left = 0
  for (const one of ones) {
    const translated = inOne(one, language)
    if (!translated.own) {
      if (id !== undefined) throw new Misuse(`"${id}" is not translated into ${language} in this workspace. Begin with: rungbook translate ${language} ${id}`)
      continue
    }
    const { file } = translated.own
    const seal = wordSeal(translated)
    if (seal.of.size > MOST_KEYS) throw new Misuse(`"${one.id}" has ${seal.of.size} parts, more than the ${MOST_KEYS} that can be sealed. Split it.`)
    const changed = await sealWords(folder, file, seal.of)
    if (changed || id !== undefined) console.out(`${file}: ${seal.of.size} parts sealed\n`)
    for (const { key, why } of seal.left) console.note(`${forTerminal(`${file}: ${key} is not sealed: ${why}`)}\n`)
    left += seal.left.length
  }
  return left > 0 ? EXIT.findings : EXIT.fine
}
