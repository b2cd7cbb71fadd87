import { checkedWorkspace, workspaceOption } from './curriculum.ts'
import { report } from './report.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** `rungbook check`: everything a coach can put right. */
export const checkVerb: Verb = {
  name: 'check',
  says: 'finds what is wrong with the ladders and pages of a workspace',
  usage: 'rungbook check [--workspace DIR] [--format text|json]',
  options: { ...workspaceOption, format: { type: 'string' } },

  async run(typed, console) {
    const format = typed.options.format ?? 'text'
    if (format !== 'text' && format !== 'json') throw new Misuse(`--format must be text or json, not "${format}".`)
    const { findings } = await checkedWorkspace(typed, console)
    console.out(format === 'json' ? `${JSON.stringify({ version: 1, findings }, null, 2)}\n` : report(findings))
    return findings.length === 0 ? EXIT.fine : EXIT.findings
  },
}
