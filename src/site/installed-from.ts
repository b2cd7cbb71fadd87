import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { OWN } from './disk.ts'

type Package = { readonly name: string; readonly version: string; readonly dependencies?: Readonly<Record<string, string>> }

const packageIn = async (folder: string): Promise<Package | undefined> =>
  readFile(path.join(folder, 'package.json'), 'utf8').then((text) => JSON.parse(text) as Package, () => undefined)

/** What a package.json in `folder` asks for to get this very program: the version, or the file or folder it was installed from. */
export async function installedFrom(folder: string): Promise<{ readonly name: string; readonly wants: string }> {
  const own = await packageIn(OWN)
  if (!own) throw new Error('bug: this program has no package.json')
  const from = (place: string): string => `file:${path.relative(folder, place).replaceAll('\\', '/')}`
  const above = path.dirname(OWN)
  if (path.basename(above) !== 'node_modules') return { name: own.name, wants: from(OWN) }
  const holder = path.dirname(above)
  const wanted = (await packageIn(holder))?.dependencies?.[own.name]
  if (wanted === undefined) return { name: own.name, wants: `^${own.version}` }
  return { name: own.name, wants: wanted.startsWith('file:') ? from(path.resolve(holder, wanted.slice('file:'.length))) : wanted }
}
