import { inOrder, placeOf, type Finding, type Place } from '../ladder/finding.ts'
import { readExported, wayTo } from '../read/read-exported.ts'
import { readPage } from '../read/read-page.ts'
import { readTable } from '../read/read-table.ts'
import { ladderFile, otherwiseRead, pageFileText, tableFile } from '../read/table-files.ts'
import { atTop, type Reading } from '../read/text.ts'

/** A file that may be written, and where in what was imported it came from. */
export type Candidate = { readonly kind: 'ladder' | 'page'; readonly id: string; readonly text: string; readonly from: Place; readonly named: string }

const RULE = 'tables-are-sound'

/** What a table or an exported JSON holds, as files; or every finding about it. All of it is sound, or nothing is given. */
export function imported(name: string, bytes: Uint8Array, encoding: string | undefined): Reading<readonly Candidate[]> {
  return /\.json$/i.test(name) ? outOfJson(name, bytes) : outOfTable(name, bytes, encoding)
}

function outOfTable(name: string, bytes: Uint8Array, encoding: string | undefined): Reading<readonly Candidate[]> {
  const { value: ladders, findings } = readTable(name, bytes, encoding)
  if (!ladders) return { findings: inOrder(findings) }
  const files = ladders.map((ladder) => ({ ladder, file: tableFile(ladder) }))
  const wrong = files.flatMap(({ file }) => file.findings)
  if (wrong.length > 0) return { findings: inOrder(wrong) }
  return { value: files.flatMap(({ ladder, file }) => (file.value ? [candidate(placeOf(ladder.places, ['id']), file.value)] : [])), findings: [] }
}

const candidate = (from: Place, { id, text }: { readonly id: string; readonly text: string }): Candidate => ({ kind: 'ladder', id, text, from, named: `Row ${from.line}` })

function outOfJson(name: string, bytes: Uint8Array): Reading<readonly Candidate[]> {
  const value = parsed(bytes)
  if (value === undefined) return { findings: [atTop(name, RULE, 'The file is not JSON. Write it with rungbook export --format json.')] }
  const { value: exported, findings } = readExported(name, value)
  if (!exported) return { findings }
  const top = { file: name, line: 1, column: 1 }
  const wrong: Finding[] = []
  const ladders = exported.ladders.flatMap((ladder, index): Candidate[] => {
    const file = ladderFile(ladder)
    const named = wayTo(['ladders', index])
    if ('text' in file) return [{ ...candidate(top, file), named }]
    wrong.push(...file.changed.map((path) => ({ ...top, rule: RULE, message: `${wayTo(['ladders', index, ...path])}: ${otherwiseRead(file)}` })))
    return []
  })
  const pages = exported.pages.map((page, index): Candidate => ({ kind: 'page', id: page.id, text: pageFileText(page), from: top, named: wayTo(['pages', index]) }))
  const unread = pages.flatMap(({ id, text, named }) => readPage(`content/${id}.md`, name, new TextEncoder().encode(text), '').findings.map(({ message }) => ({ ...top, rule: RULE, message: `${named}: ${message}` })))
  return wrong.length + unread.length > 0 ? { findings: [...wrong, ...unread] } : { value: [...ladders, ...pages], findings: [] }
}

/** The most an exported curriculum may weigh. Units bytes. Chosen by us. */
const MOST_BYTES = 64 * 1024 * 1024

function parsed(bytes: Uint8Array): unknown {
  if (bytes.length > MOST_BYTES) return undefined
  try {
    return JSON.parse(new TextDecoder().decode(bytes)) as unknown
  } catch {
    return undefined
  }
}
