import { readdir, stat } from 'node:fs/promises'
import path from 'node:path'
import { filesBelow } from './manifest.ts'

/** One thing a telephone loads, and the most it may weigh. Units bytes, as they are sent. */
export type Weight = { readonly says: string; readonly file: string; readonly bytes: number; readonly most: number }

const KIB = 1024
/** Papers to print are opened at a desk, and earlier editions by who looks for them. */
const FOR_PAPER = /^([a-z-]+\/)?(editions|cards)\//

/** What is weighed, and the most it may weigh compressed. Chosen by us: a ladder is read in a gym with one bar of signal. */
const MOST = { ladder: 14 * KIB, rung: 14 * KIB, other: 20 * KIB, style: 10 * KIB, first: 8 * KIB, visit: 50 * KIB } as const

/** As it is sent: the smaller copy beside a file, or the file itself. */
async function sent(folder: string, name: string): Promise<number> {
  const small = await stat(path.join(folder, `${name}.br`)).catch(() => undefined)
  return (small ?? (await stat(path.join(folder, name)))).size
}

async function heaviest(folder: string, says: string, names: readonly string[], most: number): Promise<Weight[]> {
  const weighed = await Promise.all(names.map(async (file) => ({ says, file, bytes: await sent(folder, file), most })))
  return weighed.toSorted((a, b) => b.bytes - a.bytes).slice(0, 1)
}

/**
 * The heaviest of each kind of file in a handbook, compressed, and what a first visit to the heaviest ladder loads in all:
 * its page, the stylesheet and every script a ladder page runs.
 */
export async function weights(folder: string, ladders: readonly string[]): Promise<Weight[]> {
  const names = await filesBelow(folder)
  const own = new Set(ladders)
  const pages = names.filter((name) => name.endsWith('.html') && !FOR_PAPER.test(name))
  const isRung = (name: string): boolean => own.has(name.split('/').at(-3) ?? '')
  const isLadder = (name: string): boolean => own.has(name.split('/').at(-2) ?? '') && /^([a-z-]+\/)?[a-z0-9-]+\/index\.html$/.test(name) && !isRung(name)
  const [ladder] = await heaviest(folder, 'a ladder', pages.filter(isLadder), MOST.ladder)
  const rung = await heaviest(folder, 'a rung', pages.filter(isRung), MOST.rung)
  const other = await heaviest(folder, 'another page', pages.filter((name) => !isLadder(name) && !isRung(name)), MOST.other)
  const style = await heaviest(folder, 'the stylesheet', ['assets/handbook.css'], MOST.style)
  const scripts = (await readdir(path.join(folder, 'assets'))).filter((name) => name.endsWith('.js') && !/^(my-ladders|search|find-your-rung|preview)-/.test(name)).map((name) => `assets/${name}`)
  const all = await Promise.all(scripts.map((name) => sent(folder, name)))
  const visit = (ladder?.bytes ?? 0) + (style[0]?.bytes ?? 0) + all.reduce((sum, bytes) => sum + bytes, 0)
  return [
    ...(ladder ? [ladder] : []),
    ...rung,
    ...other,
    ...style,
    { says: 'the script every page runs', file: 'assets/handbook.js', bytes: await sent(folder, 'assets/handbook.js'), most: MOST.first },
    ...(ladder ? [{ says: 'a first visit to that ladder, with every script of it', file: ladder.file, bytes: visit, most: MOST.visit }] : []),
  ]
}

const kib = (bytes: number): string => `${(bytes / KIB).toFixed(1)} KiB`

/** The weights as a table: what, how heavy, how heavy it may be, and which file. */
export function weightTable(all: readonly Weight[]): string {
  const wide = Math.max(0, ...all.map(({ says }) => says.length))
  return all.map(({ says, file, bytes, most }) => `  ${says.padEnd(wide)}  ${kib(bytes).padStart(9)} of ${kib(most).padStart(9)}${bytes > most ? '  too heavy' : ''}  ${file}\n`).join('')
}

export const tooHeavy = (all: readonly Weight[]): readonly Weight[] => all.filter(({ bytes, most }) => bytes > most)
