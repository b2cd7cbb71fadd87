import type { Finding } from '../ladder/finding.ts'
import type { Outcome } from './report.ts'

const NAMED: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&apos;', '\n': '&#10;', '\t': '&#9;' }

/** Text for XML 1.0: what it cannot hold is dropped, what it reads otherwise is named, and so is what a workflow would take for a command. */
export const forXml = (text: string): string =>
  text.replace(/[^\t\n\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu, '').replace(/[&<>"'\n\t]/g, (character) => NAMED[character] ?? character).replaceAll('##[', '##&#91;')

function suite(file: string, findings: readonly Finding[], skipped: readonly Finding[]): string {
  const failed = findings.map(
    ({ rule, line, column, message }) => `    <testcase name="${forXml(`${line}:${column} ${rule}`)}" classname="${forXml(file)}"><failure message="${forXml(message)}"/></testcase>`,
  )
  const open = skipped.map(({ rule, line, column, message }) => `    <testcase name="${forXml(`${line}:${column} ${rule}`)}" classname="${forXml(file)}"><skipped message="${forXml(message)}"/></testcase>`)
  return `  <testsuite name="${forXml(file)}" tests="${findings.length + skipped.length}" failures="${findings.length}" skipped="${skipped.length}">\n${[...failed, ...open].join('\n')}\n  </testsuite>`
}

/** JUnit XML: a suite a file, a failed case a finding, a skipped one what cannot be told. With nothing to say, one case that passed. */
export function junitReport({ findings, untold }: Outcome): string {
  const files = [...new Set([...findings, ...untold].map(({ file }) => file))]
  const of = (list: readonly Finding[], file: string): Finding[] => list.filter((finding) => finding.file === file)
  const suites = files.map((file) => suite(file, of(findings, file), of(untold, file)))
  const fine = '  <testsuite name="check" tests="1" failures="0" skipped="0">\n    <testcase name="nothing to put right" classname="check"/>\n  </testsuite>'
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="rungbook check" tests="${findings.length + untold.length || 1}" failures="${findings.length}">\n${suites.length > 0 ? suites.join('\n') : fine}\n</testsuites>\n`
}
