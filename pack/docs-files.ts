import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { docsText } from './docs-text.ts'

const DOCS = path.resolve(import.meta.dirname, '../docs')
const below = (folder: string): string[] => readdirSync(path.join(DOCS, folder)).filter((name) => name.endsWith('.md')).toSorted()
const read = (name: string): string => readFileSync(path.join(DOCS, name), 'utf8')

/** Where the pages of the documentation lie. */
export const CONTENT = path.join(DOCS, 'content')

/** The generated pages as they would be written now, from what lies on disk. */
export const docsNow = (): ReadonlyMap<string, string> =>
  docsText(below('ladders').map((name) => read(`ladders/${name}`)), Object.fromEntries(below('equations').map((name) => [path.basename(name, '.md'), read(`equations/${name}`)])))
