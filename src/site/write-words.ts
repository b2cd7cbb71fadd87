import { mkdir, readFile, writeFile } from 'node:fs/promises'
import path from 'node:path'

/** The file's text with its block `of:` written anew at the same place, or as the last thing of the front matter; all else as it was. */
export function withSeal(text: string, of: ReadonlyMap<string, string>): string {
  const lines = text.split('\n')
  const ending = lines[0]?.endsWith('\r') ? '\r' : ''
  const close = lines.findIndex((line, index) => index > 0 && line.trimEnd() === '---')
  const block = of.size === 0 ? [] : ['of:', ...[...of].map(([key, digest]) => `  ${key}: ${JSON.stringify(digest)}`)].map((line) => line + ending)
  const was = lines.findIndex((line, index) => index > 0 && index < close && /^of\s*:/.test(line))
  if (was < 0) lines.splice(close, 0, ...block)
  else {
    const next = lines.findIndex((line, index) => index > was && (index >= close || /^\S/.test(line)))
    lines.splice(was, next - was, ...block)
  }
  return lines.join('\n')
}

/** Writes the digests of what was translated into a translation of this workspace. True where that changed the file. */
export async function sealWords(folder: string, file: string, of: ReadonlyMap<string, string>): Promise<boolean> {
  const place = path.resolve(folder, file)
  if (!place.startsWith(folder + path.sep)) return false // a layer below is not ours to change
  const before = await readFile(place, 'utf8')
  const after = withSeal(before, of)
  if (after !== before) await writeFile(place, after)
  return after !== before
}

/** Writes a file that is not there yet; false where there is one, which is left as it is. */
export async function writeNew(folder: string, file: string, text: string): Promise<boolean> {
  const place = path.resolve(folder, file)
  await mkdir(path.dirname(place), { recursive: true })
  try {
    await writeFile(place, text, { flag: 'wx' })
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw error
  }
}
