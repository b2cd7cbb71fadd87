import path from 'node:path'
import { isMissing, missing, type Missing } from '../quantity/outcome.ts'
import { chromiumPath, NO_CHROMIUM } from '../site/chromium.ts'
import { healed, unfitOutput } from '../site/publish.ts'
import { keptHere } from '../site/kept-here.ts'
import { tooHeavy, weights, weightTable } from '../site/weights.ts'
import { checkedWorkspace, workspaceOption } from './curriculum.ts'
import { FORMATS } from './report.ts'
import { workersAsked, workersOption } from './workers.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** `rungbook build`: check, measure, draw, write; the old handbook stays whole if anything fails. */
export const buildVerb: Verb = {
  name: 'build',
  says: 'writes the handbook, if nothing is to be put right',
  usage: 'rungbook build [--workspace DIR] [--output DIR] [--pdf] [--link] [--weigh] [--workers N] [--no-cache]\n\n  --pdf       prints the wall and pocket cards to PDF as well, with the Chromium of this machine\n  --link      writes beside the output and turns a link to it at one stroke, for a server that reads it meanwhile\n  --weigh     shows what the heaviest pages weigh on their way to a telephone, and fails where one is too heavy\n  --workers   how many cores may draw; all of them unless given\n  --no-cache  makes everything anew; the bytes are the same',
  examples: ['rungbook build', 'rungbook build --workspace club --output public', 'rungbook build --pdf'],
  alone: true,
  options: { ...workspaceOption, output: { type: 'string' }, pdf: { type: 'boolean' }, link: { type: 'boolean' }, weigh: { type: 'boolean' }, ...workersOption, 'no-cache': { type: 'boolean' } },

  async run(typed, console) {
    const workers = workersAsked(typed)
    const kept = typed.options['no-cache'] === true ? undefined : await keptHere()
    const checked = await checkedWorkspace(typed, console, undefined, { kept: async () => kept })
    const { measured, findings, workspace, folder } = checked
    const out = typeof typed.options.output === 'string' ? path.resolve(console.folder, typed.options.output) : path.join(folder, '_site')
    await healed(out).catch(() => undefined) // what cannot be healed cannot be written either, and is said below
    if (!measured || findings.length > 0) {
      console.out(FORMATS.text(checked, console.colour))
      return EXIT.findings
    }
    const unfit = await unfitOutput(out, workspace.folders)
    if (unfit) throw new Misuse(unfit)
    const chromium = typed.options.pdf === true ? chromiumPath() : undefined
    if (typed.options.pdf === true && chromium === undefined) throw new Misuse(NO_CHROMIUM)
    const { buildSite } = await import('../site/build.ts') // what draws and writes is loaded only by who draws: a check starts in half the time
    const built = await buildSite(measured, { folder, layers: workspace.folders }, out, (stage) => console.progress(stage), { chromium, kept, workers, link: typed.options.link === true }).catch(unwritten)
    if (isMissing(built)) {
      console.note(`The handbook was not written: ${built.missing}. The old one stays as it was.${chromium === undefined ? '' : ' Build without --pdf, or set CHROMIUM_PATH to another Chromium.'}\n`)
      return EXIT.usage
    }
    console.out(`${built.pages} pages in ${built.files} files: ${path.relative(console.folder, out) || out}\n`)
    if (typed.options.weigh !== true) return EXIT.fine
    const weighed = await weights(out, measured.ladders.map(({ id }) => id))
    console.out(weightTable(weighed))
    return tooHeavy(weighed).length === 0 ? EXIT.fine : EXIT.findings
  },
}

/** What a machine calls its reasons not to write, in words. */
const REASONS: Readonly<Record<string, string>> = {
  ENOSPC: 'the disk is full',
  EDQUOT: 'the share of the disk that is yours is full',
  EROFS: 'the disk can only be read',
  EACCES: 'the place may not be written to',
  EPERM: 'the place may not be written to',
  EIO: 'the disk fails',
  EMFILE: 'too many files are open',
  ENOENT: 'a file was taken away while it was read or written',
  EBUSY: 'another program holds one of the files',
}

/** Why nothing could be written, where the machine says so; anything else is our mistake. */
function unwritten(error: unknown): Missing {
  for (let at: unknown = error; at instanceof Error; at = 'originalError' in at ? at.originalError : at.cause) {
    const reason = 'code' in at ? REASONS[String(at.code)] : undefined
    if (reason !== undefined) return missing(reason)
  }
  throw error
}
