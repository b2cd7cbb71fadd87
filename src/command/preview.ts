import { cacheFolder, cacheIn } from '../site/cache.ts'
import { previewServer } from '../site/preview-server.ts'
import { checkedWorkspace, workspaceOption } from './curriculum.ts'
import { FORMATS } from './report.ts'
import { EXIT, Misuse, type Verb } from './verb.ts'

/** `rungbook preview`: the handbook from memory, on this machine only. */
export const previewVerb: Verb = {
  name: 'preview',
  says: 'shows the handbook on this machine, from memory',
  usage: 'rungbook preview [--workspace DIR] [--port N]',
  examples: ['rungbook preview', 'rungbook preview --workspace club --port 8081'],
  alone: true,
  options: { ...workspaceOption, port: { type: 'string' } },

  async run(typed, console) {
    const wanted = Number(typed.options.port ?? 8080)
    if (!Number.isInteger(wanted) || wanted < 0 || wanted > 65535) throw new Misuse('--port must be a whole number from 0 to 65535.')
    const checked = await checkedWorkspace(typed, console)
    const { measured, findings, folder, workspace } = checked
    if (!measured || findings.length > 0) {
      console.out(FORMATS.text(checked, console.colour))
      return EXIT.findings
    }
    const { siteInMemory } = await import('../site/build.ts') // loaded only where something is drawn
    const files = new Map((await siteInMemory(measured, { folder, layers: workspace.folders }, cacheIn(cacheFolder()))).map(({ name, bytes }) => [name, bytes]))
    const { server, port } = await previewServer(() => files, wanted)
    console.out(`The handbook is at http://127.0.0.1:${port}/ until you press Ctrl-C.\n`)
    await console.ended()
    server.close()
    server.closeAllConnections()
    return EXIT.fine
  },
}
