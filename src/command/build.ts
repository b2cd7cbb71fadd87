import path from 'node:path'
import { isMissing } from '../quantity/outcome.ts'
import { cacheFolder, cacheIn, NO_CACHE } from '../site/cache.ts'
import { chromiumPath, NO_CHROMIUM } from '../site/chromium.ts'
import { unfitOutput } from '../site/publish.ts'
import { checkedWorkspace, workspaceOption } from './curriculum.ts'
import { FORMATS } from './report.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** `rungbook build`: check, measure, draw, write; the old handbook stays whole if anything fails. */
export const buildVerb: Verb = {
  name: 'build',
  says: 'writes the handbook, if nothing is to be put right',
  usage: 'rungbook build [--workspace DIR] [--output DIR] [--pdf] [--no-cache]\n\n  --pdf       prints the wall and pocket cards to PDF as well, with the Chromium of this machine\n  --no-cache  makes everything anew; the bytes are the same',
  examples: ['rungbook build', 'rungbook build --workspace club --output public', 'rungbook build --pdf'],
  alone: true,
  options: { ...workspaceOption, output: { type: 'string' }, pdf: { type: 'boolean' }, 'no-cache': { type: 'boolean' } },

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
    const chromium = typed.options.pdf === true ? chromiumPath() : undefined
    if (typed.options.pdf === true && chromium === undefined) throw new Misuse(NO_CHROMIUM)
    const { buildSite } = await import('../site/build.ts') // what draws and writes is loaded only by who draws: a check starts in half the time
    const built = await buildSite(measured, { folder, layers: workspace.folders }, out, (stage) => console.progress(stage), { chromium, cache: typed.options['no-cache'] === true ? NO_CACHE : cacheIn(cacheFolder()) })
    if (isMissing(built)) throw new Misuse(`${built.missing}. The handbook was not written; build without --pdf, or set CHROMIUM_PATH to another Chromium.`)
    console.out(`${built.pages} pages in ${built.files} files: ${path.relative(console.folder, out) || out}\n`)
    return EXIT.fine
  },
}
