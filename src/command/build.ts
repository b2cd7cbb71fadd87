import path from 'node:path'
import { buildSite } from '../site/build.ts'
import { unfitOutput } from '../site/publish.ts'
import { checkedWorkspace, workspaceOption } from './curriculum.ts'
import { FORMATS } from './report.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** `rungbook build`: check, measure, draw, write; the old handbook stays whole if anything fails. */
export const buildVerb: Verb = {
  name: 'build',
  says: 'writes the handbook, if nothing is to be put right',
  usage: 'rungbook build [--workspace DIR] [--output DIR]',
  options: { ...workspaceOption, output: { type: 'string' } },

  async run(typed, console) {
    const checked = await checkedWorkspace(typed, console)
    const { measured, findings, workspace, folder } = checked
    if (!measured || findings.length > 0) {
      console.out(FORMATS.text(checked, console.colour))
      return EXIT.findings
    }
    const out = typeof typed.options.output === 'string' ? path.resolve(console.folder, typed.options.output) : path.join(folder, '_site')
    const unfit = await unfitOutput(out, workspace.folders)
    if (unfit) throw new Misuse(unfit)
    const { pages, files } = await buildSite(measured, folder, out, (stage) => console.progress(stage))
    console.out(`${pages} pages in ${files} files: ${path.relative(console.folder, out) || out}\n`)
    return EXIT.fine
  },
}
