import type { SiteFile } from '../site/site-file.ts'
import type { LiveHandbook } from '../site/live-handbook.ts'
import { cacheFolder, cacheIn } from '../site/cache.ts'
import { previewServer, type PreviewServer } from '../site/preview-server.ts'
import { watchWorkspace } from '../site/watch.ts'
import { checkedWorkspace, nothingSeen, workspaceOption, type Checked } from './curriculum.ts'
import { FORMATS } from './report.ts'
import { framed } from './report-frame.ts'
import { EXIT, Misuse, type Console, type Typed, type Verb } from './verb.ts'

/** `rungbook preview`: the handbook from memory, on this machine only, anew after each save. */
export const previewVerb: Verb = {
  name: 'preview',
  says: 'shows the handbook on this machine, from memory, anew after each save',
  usage: 'rungbook preview [--workspace DIR] [--port N]',
  examples: ['rungbook preview', 'rungbook preview --workspace club --port 8081'],
  alone: true,
  options: { ...workspaceOption, port: { type: 'string' } },

  async run(typed, console) {
    const wanted = Number(typed.options.port ?? 8080)
    if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) throw new Misuse('--port must be a whole number from 0 to 65535.')
    const preview = await startPreview(typed, console, wanted)
    console.out(`The handbook is at http://127.0.0.1:${preview.port}/ until you press Ctrl-C.\n`)
    await console.ended()
    preview.close()
    return EXIT.fine
  },
}

/** What a preview shows now: the handbook as far as it can be read, the last that was sound for the pages that cannot, and what is to be put right. */
type Shown = { readonly version: number; readonly handbook: LiveHandbook | undefined; readonly sound: LiveHandbook | undefined; readonly checked: Checked }

async function startPreview(typed: Typed, console: Console, port: number): Promise<PreviewServer> {
  const [{ liveHandbook }, { panelFiles }] = await Promise.all([import('../site/live-handbook.ts'), import('../site/panel-assets.ts')]) // what draws is loaded only by who draws
  const cache = cacheIn(cacheFolder())
  const assets = new Map()
  const seen = nothingSeen()
  const read = async (before?: Shown): Promise<Shown> => {
    const checked = await checkedWorkspace(typed, console, undefined, { seen })
    const { measured, folder, workspace } = checked
    const handbook = measured && liveHandbook(measured, { folder, layers: workspace.folders }, cache, assets)
    return { version: (before?.version ?? 0) + 1, handbook, sound: handbook && checked.findings.length === 0 ? handbook : before?.sound, checked }
  }
  let shown = await read()
  const panel = panelFiles()
  const files = { get: async (name: string): Promise<SiteFile['bytes'] | undefined> => (await shown.handbook?.file(name)) ?? (shown.sound === shown.handbook ? undefined : shown.sound?.file(name)) }
  const server = await previewServer(() => files, port, { panel: async (name) => (await panel).get(name), findings: () => findingsJson(shown), version: () => shown.version })
  const say = ({ checked }: Shown): void => console.note(FORMATS.text(checked, console.colour))
  if (shown.checked.findings.length > 0) say(shown)
  const folders = shown.checked.workspace.folders.length > 0 ? shown.checked.workspace.folders : [shown.checked.folder]
  const end = watchWorkspace(folders, async () => {
    shown = await read(shown)
    server.tell()
    say(shown)
  })
  return { ...server, close: () => (end(), server.close()) }
}

const findingsJson = ({ checked: { findings, sources } }: Shown): string => JSON.stringify({ findings: findings.map((finding) => ({ ...finding, frame: framed(finding, sources) })) })
