import { readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'
import type { MeasuredLadder } from '../measure/measure.ts'
import { placeOf } from '../ladder/finding.ts'

/** A reviewer's name and the day. */
export type Signature = { readonly by: string; readonly on: string }

/** Words in YAML's double quotes. */
export const forYaml = (text: string): string => JSON.stringify(text)

/**
 * Writes a review into the front matter of the ladder's own file, or of this workspace's amendment to it, in place of one that is there.
 *
 * Shape   a folder, a measured ladder and a signature to the file that was written; undefined where none of it is this workspace's.
 */
export async function seal(folder: string, ladder: MeasuredLadder, { by, on }: Signature): Promise<string | undefined> {
  const files = [placeOf(ladder.places, ['review']).file, placeOf(ladder.places, ['amends']).file, placeOf(ladder.places, ['because']).file, placeOf(ladder.places, ['id']).file]
  const file = files.find((name) => path.resolve(folder, name).startsWith(folder + path.sep))
  if (file === undefined) return undefined
  const place = path.resolve(folder, file)
  const lines = (await readFile(place, 'utf8')).split('\n')
  const close = lines.findIndex((line, index) => index > 0 && line.trimEnd() === '---')
  const ending = lines[0]?.endsWith('\r') ? '\r' : ''
  const line = `review: { by: ${forYaml(by)}, on: ${on}, seal: ${forYaml(ladder.digest)} }${ending}`
  const was = lines.findIndex((text, index) => index > 0 && index < close && text.startsWith('review:'))
  if (was < 0) lines.splice(close, 0, line)
  else {
    const next = lines.findIndex((text, index) => index > was && (index >= close || /^\S/.test(text)))
    lines.splice(was, next - was, line)
  }
  await writeFile(place, lines.join('\n'))
  return file
}
