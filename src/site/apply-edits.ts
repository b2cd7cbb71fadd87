import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import { quotedAt } from '../editor/mark.ts'
import type { Edit, Finding } from '../ladder/finding.ts'

/** An edit that was made, as it reads before and after. */
export type Made = { readonly file: string; readonly line: number; readonly before: string; readonly after: string }

/** A line with the edit made, or undefined where the line is not as it was when the edit was thought of. */
function edited(line: string, { column, old, text }: Edit): string | undefined {
  const from = column - 1
  const quoted = quotedAt(line, from, old)
  return quoted === undefined ? undefined : `${line.slice(0, from)}${text}${line.slice(from + old.length + 2 * quoted.length)}`
}

/**
 * Makes the single-edit remedies in the files of one workspace, and in no other.
 *
 * Shape   a folder and findings to what was changed, in file order; a file is written once, and only if something in it changed.
 */
export async function applyEdits(folder: string, findings: readonly Finding[]): Promise<Made[]> {
  const made: Made[] = []
  const files = [...new Set(findings.filter(({ edit }) => edit).map(({ file }) => file))]
  for (const file of files) {
    const place = path.resolve(folder, file)
    if (!place.startsWith(folder + path.sep)) continue // a layer below is not ours to change
    const lines = (await readFile(place, 'utf8')).split('\n')
    const edits = findings.flatMap((finding) => (finding.file === file && finding.edit ? [finding.edit] : [])).toSorted((a, b) => b.line - a.line || b.column - a.column)
    const before = made.length
    for (const edit of edits) {
      const line = lines[edit.line - 1]
      const after = line === undefined ? undefined : edited(line, edit)
      if (line === undefined || after === undefined) continue
      lines[edit.line - 1] = after
      made.push({ file, line: edit.line, before: line.trim(), after: after.trim() })
    }
    if (made.length > before) await writeFile(place, lines.join('\n'))
  }
  return made
}
