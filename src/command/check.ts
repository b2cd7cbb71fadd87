import { checkedWorkspace, workspaceOption } from './curriculum.ts'
import { FORMATS, isFormat } from './report.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** `rungbook check`: everything a coach can put right. */
export const checkVerb: Verb = {
  name: 'check',
  says: 'finds what is wrong with the ladders and pages of a workspace',
  usage: `rungbook check [--workspace DIR] [--format ${Object.keys(FORMATS).join('|')}]`,
  options: { ...workspaceOption, format: { type: 'string' } },

  async run(typed, console) {
    const format = typed.options.format ?? 'text'
    if (!isFormat(format)) throw new Misuse(`--format must be one of ${Object.keys(FORMATS).join(', ')}, not "${String(format)}".`)
    const checked = await checkedWorkspace(typed, console)
    console.out(FORMATS[format](checked, console.colour))
    return checked.findings.length === 0 ? EXIT.fine : EXIT.findings
  },
}
