import { lstat, readdir, readFile, realpath } from 'node:fs/promises'
import path from 'node:path'
import { nearest } from '../read/nearest.ts'

/** The most a picture may weigh. Units bytes. Chosen by us: a camera's largest. */
const MOST_BYTES = 20 * 1024 * 1024

/** Where pictures are looked for: the workspace, and the folders of its layers. */
export type Shelves = { readonly folder: string; readonly layers: readonly string[] }

/** A picture's bytes, or in a sentence why it cannot be shown. */
export type Taken = { readonly bytes: Uint8Array } | { readonly wrong: string }

/**
 * Reads a picture for the text that shows it.
 *
 * Shape   a picture and the file of the text, both as findings name them, to bytes. Nothing outside the text's own layer is opened, and no link followed.
 */
export async function pictureBytes(file: string, from: string, { folder, layers }: Shelves): Promise<Taken> {
  const [wanted, text] = [path.resolve(folder, file), path.resolve(folder, from)]
  const layer = layers.filter((each) => inside(each, text)).toSorted((a, b) => b.length - a.length)[0]
  const name = path.basename(file)
  if (layer === undefined || !inside(layer, wanted)) return { wrong: `The picture "${name}" lies outside the workspace. Put it among the ladders or the content, such as in pictures/.` }
  const about = await lstat(wanted).catch(() => undefined)
  if (!about) return { wrong: `There is no picture "${name}" there.${await guess(wanted)}` }
  if (!about.isFile() || (await realpath(wanted).catch(() => undefined)) !== wanted) return { wrong: `The picture "${name}" is a link, a folder or a device, or lies behind one. Put the file itself there.` }
  if (about.size === 0) return { wrong: `The picture "${name}" is empty. Save it again.` }
  if (about.size > MOST_BYTES) return { wrong: `The picture "${name}" is larger than ${MOST_BYTES / 1024 / 1024} MB. Save it smaller; 1500 pixels across are enough.` }
  const bytes = await readFile(wanted).catch(() => undefined)
  return bytes ? { bytes } : { wrong: `The picture "${name}" may not be opened. Make it readable.` }
}

const inside = (folder: string, file: string): boolean => file.startsWith(folder.endsWith(path.sep) ? folder : folder + path.sep)

/** A file beside it whose name is nearly the one wanted. */
async function guess(wanted: string): Promise<string> {
  const names = await readdir(path.dirname(wanted)).catch(() => [])
  const like = nearest(path.basename(wanted), names.slice(0, 500))
  return like ? ` Did you mean ${like}?` : ' Put it there, or mend the way to it.'
}
