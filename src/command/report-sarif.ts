import { createHash } from 'node:crypto'
import { rules } from '../check/index.ts'
import type { Finding } from '../ladder/finding.ts'
import { asJson } from './report-json.ts'
import type { Outcome } from './report.ts'

/** What a finding is about, whatever its words: the same after a reword, another after a move to another rung. */
const fingerprint = ({ rule, file, subject }: Finding): string => createHash('sha256').update(`${rule}\n${subject ?? file}`).digest('hex').slice(0, 32)

/** A file's name as an address in SARIF; half a character, which no address can hold, is written as the sign for what is unknown. */
export const uriOf = (file: string): string => file.replace(/\p{Surrogate}/gu, '\ufffd').split('/').map(encodeURIComponent).join('/')

const result = (finding: Finding, level: 'error' | 'note', kind: 'fail' | 'open') => ({
  ruleId: finding.rule,
  level: kind === 'open' ? ('none' as const) : level,
  kind,
  message: { text: finding.message },
  locations: [{ physicalLocation: { artifactLocation: { uri: uriOf(finding.file), uriBaseId: 'WORKSPACE' }, region: { startLine: finding.line, startColumn: finding.column } } }],
  partialFingerprints: { 'rungbookSubject/v1': fingerprint(finding) },
})

/** SARIF 2.1.0, as code hosts show it beside the lines of a pull request. */
export function sarifReport({ findings, untold }: Outcome): string {
  const named = new Set([...findings, ...untold].map(({ rule }) => rule))
  const described = rules.map(({ name, says, why }) => ({ id: name, shortDescription: { text: says }, fullDescription: { text: why } }))
  const others = [...named].filter((name) => !rules.some((rule) => rule.name === name)).map((name) => ({ id: name, shortDescription: { text: `${name.replaceAll('-', ' ')}.` } }))
  return asJson(
    {
      $schema: 'https://json.schemastore.org/sarif-2.1.0.json',
      version: '2.1.0',
      runs: [
        {
          tool: { driver: { name: 'rungbook', rules: [...described, ...others] } },
          columnKind: 'utf16CodeUnits',
          results: [...findings.map((finding) => result(finding, 'error', 'fail')), ...untold.map((finding) => result(finding, 'note', 'open'))],
        },
      ],
    },
  )
}
