import type { Change } from '../compare/change.ts'
import { changeText, SAYS, whereOf } from '../compare/say.ts'
import { asJson } from './report-json.ts'
import { uriOf } from './report-sarif.ts'
import type { Reviewed } from './review.ts'

const LEVEL: Record<Change['weight'], 'error' | 'warning' | 'note'> = { 're-placing': 'warning', 'to judge': 'warning', growth: 'note', wording: 'note' }

const result = (change: Change) => ({
  ruleId: change.kind,
  level: change.unsafe ? ('error' as const) : LEVEL[change.weight],
  message: { text: `${whereOf(change)}: ${changeText(change)}` },
  locations: change.is ? [{ physicalLocation: { artifactLocation: { uri: uriOf(change.is.file), uriBaseId: 'WORKSPACE' }, region: { startLine: change.is.line, startColumn: change.is.column } } }] : [],
  partialFingerprints: { 'rungbookChange/v1': change.fingerprint },
})

/** SARIF 2.1.0: each change beside its line. */
export function reviewSarif({ comparison: { typed, followed } }: Reviewed): string {
  const changes = [...typed, ...followed]
  const kinds = [...new Set(changes.map(({ kind }) => kind))]
  return asJson({ $schema: 'https://json.schemastore.org/sarif-2.1.0.json', version: '2.1.0', runs: [{ tool: { driver: { name: 'rungbook review', rules: kinds.map((kind) => ({ id: kind, shortDescription: { text: SAYS[kind] } })) } }, columnKind: 'utf16CodeUnits', results: changes.map(result) }] })
}
