import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'

/** What is offered as modules: the folders in the order in which they build on one another, and the files of each that are for others. */
export const OFFERED = [
  { folder: 'quantity', files: ['outcome', 'spread', 'unit', 'figure'], says: 'Units, spreads, and a value or the reason there is none.' },
  { folder: 'load', files: ['index', 'model', 'drawn', 'fit', 'body', 'repetitions', 'band', 'plates', 'floor-marks', 'sources'], says: 'The load models, one published formula each, and how to ask them, forwards and backwards.' },
  { folder: 'ladder', files: ['curriculum', 'schema', 'finding', 'digest'], says: 'What a ladder, a curriculum and a finding are.' },
  { folder: 'read', files: ['read-curriculum', 'read-ladder', 'read-page', 'text'], says: 'From the bytes of files to a curriculum, or findings with their places.' },
  { folder: 'measure', files: ['measure', 'step', 'entry', 'predict', 'missing-rung', 'place', 'decide', 'come-back', 'way-to-aim'], says: 'A number, or a reason, on every rung and step.' },
  { folder: 'check', files: ['index', 'rule'], says: 'The rules, and what they find.' },
  { folder: 'compare', files: ['compare', 'change', 'say'], says: 'What differs between two measured curricula, and what follows from it.' },
] as const

/** One thing a file exports: its name, its type as TypeScript declares it, and its docstring. */
export type Exported = { readonly file: string; readonly name: string; readonly declared: string; readonly says: string }

const EXPORT = /(?:\/\*\*((?:(?!\*\/)[^])*)\*\/\n)?export (?:declare )?(?:async )?(?:const|function|type|class) (\w+)/g

/**
 * What a file of declarations exports, in the order in which it stands there.
 *
 * Shape   the text that tsc writes to names, declarations and docstrings; an empty docstring where there is none.
 */
export function exportsOf(file: string, text: string): Exported[] {
  return [...text.matchAll(EXPORT)].map((match) => {
    const from = match.index + match[0].indexOf('export ')
    return { file, name: match[2] ?? '', declared: declarationAt(text, from), says: sentences(match[1] ?? '') }
  })
}

/** From `from` to the semicolon that ends the statement, or to the brace that does. */
function declarationAt(text: string, from: number): string {
  let depth = 0
  for (let at = from; at < text.length; at += 1) {
    const sign = text[at] ?? ''
    if ('{([<'.includes(sign)) depth += 1
    else if ('})]'.includes(sign) || (sign === '>' && text[at - 1] !== '=')) depth -= 1
    else if (sign === ';' && depth === 0) return text.slice(from, at + 1)
  }
  return text.slice(from)
}

/** A docstring without its stars. */
const sentences = (comment: string): string =>
  comment
    .split('\n')
    .map((line) => line.replace(/^\s*\*? ?/, ''))
    .join('\n')
    .trim()

/** A page a module, and one that lists them. */
export function reference(folder: string, modules: readonly { readonly folder: string; readonly says: string; readonly exported: readonly Exported[] }[]): void {
  mkdirSync(folder, { recursive: true })
  const list = modules.map(({ folder: name, says }) => `- [rungbook/${name}](${name}.md): ${says}`)
  writeFileSync(path.join(folder, 'README.md'), `# What can be imported\n\nTaken from the docstrings of the source. A number has its unit at the end of its name; what cannot be computed is a value, \`{ missing: 'why' }\`, and nothing throws on what a coach wrote.\n\n${list.join('\n')}\n`)
  for (const { folder: name, says, exported } of modules) writeFileSync(path.join(folder, `${name}.md`), modulePage(name, says, exported))
}

function modulePage(folder: string, says: string, exported: readonly Exported[]): string {
  const parts = exported.map(({ name, declared, says: told }) => `## ${name}\n\n${quoted(told)}\`\`\`ts\n${declared}\n\`\`\`\n`)
  return `# rungbook/${folder}\n\n${says}\n\n\`\`\`ts\nimport { ${exported.find(({ declared }) => /^export declare (const|function)/.test(declared))?.name ?? ''} } from 'rungbook/${folder}'\n\`\`\`\n\n${parts.join('\n')}`
}

/** Prose as it is; lines that were set apart, such as a formula or Units, stay lines of their own. */
const quoted = (told: string): string => (told === '' ? '' : `${told.replaceAll('\n', '  \n')}\n\n`)
