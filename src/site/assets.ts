import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Handbook } from '../ladder/schema.ts'
import { accentOf, DARK_PAPER, LIGHT_PAPER, STARTER_ACCENT } from '../page/accent.ts'
import { editionText, imprintOf } from '../page/card-words.ts'
import type { Catalogue, Tongue } from '../page/tongue.ts'
import { spoken } from '../page/written.ts'
import { iconFiles } from './drawn-pictures.ts'
import type { SiteFile } from './site-file.ts'

const here = (file: string): string => fileURLToPath(new URL(file, import.meta.url))

/** The bundler names its parts after where they lie from here; from the folder it was started in, the same parts would have other names. */
const AT_HOME = { absWorkingDir: here('.') } as const

/** The stylesheets, in the order they are joined. */
const SHEETS = ['../page/handbook.css', '../page/prose.css', '../page/pose.css', '../page/own-numbers.css', '../page/cards.css', '../page/my-ladders.css', './diagram.css', '../page/print.css']

/** The handbook's colour and papers, as the stylesheets name them; on paper it has none. */
function colours(handbook: Handbook): string {
  const { onLight, onDark } = accentOf(handbook.colours?.accent ?? STARTER_ACCENT)
  return `@media screen{:root{--accent:${onLight};--paper:${LIGHT_PAPER}}}@media screen and (prefers-color-scheme:dark){:root{--accent:${onDark};--paper:${DARK_PAPER}}}`
}

/** Words as a string of a stylesheet, every sign but letters and digits escaped. */
export const forStyle = (words: string): string => `"${words.replace(/[^A-Za-z0-9 ]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 0).toString(16)} `)}"`

/** What stands in the margin of a printed page: edition, day and whose it is. */
function imprint(handbook: Handbook, tongue: Tongue): string {
  const words = `${spoken(editionText(imprintOf(handbook)), tongue)} · ${handbook.organisation}`
  return `:root{--imprint:${forStyle(words)}}`
}

/** Words as a string in the script that reads them: as an object they would all stand in one file. */
const asText = (words: Catalogue): string => JSON.stringify(JSON.stringify(words))

/** Scripts that speak before a reader has asked for anything; their words come with the page. */
const FIRST_SCRIPTS = ['offline', 'search', 'timer', 'own-form', 'keep', 'find-your-rung', 'ladder-data']

/** Phrases so short are put together by a script from words: `on each ${limb}`. Chosen by us. */
const SHORT = 25

/** Of a language's words, those that some scripts may say: every piece of the phrase stands in them, or every word of a short one. */
function wordsIn(scripts: string, tongue: Tongue): Catalogue {
  const text = scripts.replaceAll('\\"', '"').replaceAll("\\'", "'")
  const piecesOf = (key: string): string[] => key.split(/\{\d+\}/).flatMap((piece) => piece.split(key.length < SHORT ? /[\s,;·]+/ : /, |; | · /)).map((piece) => piece.trim()).filter((piece) => /\p{L}/u.test(piece))
  return Object.fromEntries(
    tongue.keys.flatMap((key) => {
      const said = tongue.entry(key)
      return said !== undefined && !/<\d/.test(key) && piecesOf(key).every((piece) => text.includes(piece)) ? [[key, said] as const] : []
    }),
  )
}

/** What pages load: the files, and which of the scripts the search page runs beside the one of every page. */
export type Assets = { readonly files: readonly SiteFile[]; readonly searching: readonly string[] }

/** A part of the scripts, and all that it begins with. */
function withItsOwn(name: string, outputs: Outputs): string[] {
  const own = (outputs[name]?.imports ?? []).flatMap(({ path: file, kind }) => (kind === 'import-statement' ? withItsOwn(file, outputs) : []))
  return [...new Set([name, ...own])]
}

type Outputs = Readonly<Record<string, { readonly entryPoint?: string; readonly imports: readonly { readonly path: string; readonly kind: string }[] }>>

/** The scripts of the search page, as the bundler named them. */
const searchingIn = (outputs: Outputs): string[] => Object.keys(outputs).filter((name) => path.parse(outputs[name]?.entryPoint ?? '').name === 'search').flatMap((name) => withItsOwn(name, outputs))

/** The one stylesheet, the script every page runs with the parts it fetches only where they are wanted, and the icons. */
export async function assetsOf(handbook: Handbook, tongue: Tongue): Promise<Assets> {
  const { build } = await import('esbuild')
  const sheets = await Promise.all(SHEETS.map((sheet) => readFile(here(sheet), 'utf8')))
  const css = await build({ ...AT_HOME, stdin: { contents: [...sheets, colours(handbook), imprint(handbook, tongue)].join('\n'), loader: 'css' }, minify: true, charset: 'utf8', write: false, logLevel: 'silent' })
  const scriptsWith = (first: Catalogue, more: Catalogue) => build({
    ...AT_HOME,
    metafile: true,
    define: { SCRIPT_WORDS: asText(first), MORE_WORDS: asText(more) },
    entryPoints: [here('../browser/handbook')],
    bundle: true,
    splitting: true,
    format: 'esm',
    minify: true,
    charset: 'utf8',
    target: 'es2022',
    outdir: 'assets',
    chunkNames: '[name]-[hash]',
    write: false,
    logLevel: 'silent',
  })
  const plain = await scriptsWith({}, {})
  const first = wordsIn((await Promise.all(Object.keys(plain.metafile.inputs).filter((file) => FIRST_SCRIPTS.includes(path.parse(file).name)).map((file) => readFile(path.resolve(AT_HOME.absWorkingDir, file), 'utf8')))).join('\n'), tongue)
  const more = Object.fromEntries(Object.entries(wordsIn(plain.outputFiles.map(({ text }) => text).join('\n'), tongue)).filter(([key]) => !(key in first)))
  const scripts = Object.keys({ ...first, ...more }).length === 0 ? plain : await scriptsWith(first, more)
  const whole = (script: string) => build({ ...AT_HOME, entryPoints: [here(`../browser/${script}`)], bundle: true, format: 'iife', minify: true, charset: 'utf8', target: 'es2022', write: false, logLevel: 'silent' })
  const [worker, kept] = await Promise.all([whole('service-worker'), whole('kept')])
  const files = [
    { name: 'service-worker.js', bytes: worker.outputFiles[0]?.text ?? '' },
    { name: 'assets/kept.js', bytes: kept.outputFiles[0]?.text ?? '' },
    { name: 'assets/handbook.css', bytes: css.outputFiles[0]?.text ?? '' },
    ...scripts.outputFiles.map(({ path: file, text }) => ({ name: `assets/${path.basename(file)}`, bytes: text })),
    ...iconFiles(handbook),
  ]
  return { files, searching: searchingIn(scripts.metafile.outputs) }
}
