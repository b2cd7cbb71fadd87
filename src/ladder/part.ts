import { digestOf } from './digest.ts'

/** One of so many parts of a curriculum: the second of eight is `{ nth: 2, of: 8 }`. */
export type Part = { readonly nth: number; readonly of: number }

/** Letters of a digest that choose the part: 32 bits, so that the remainder favours none by more than one in a million. */
const CHOOSING = 8
/** Parts one curriculum may be split into. Chosen by us. */
export const MOST_PARTS = 1000

/** Which of so many parts a ladder is of, from 1. By its id alone, so that it stays there whatever comes or goes beside it. */
export const nthOf = (id: string, of: number): number => (Number.parseInt(digestOf(id).slice(0, CHOOSING), 16) % of) + 1

/** Whether a ladder is of the part. */
export const isOfPart = (id: string, { nth, of }: Part): boolean => nthOf(id, of) === nth

/** Whether the part is the one that also holds the pages, and whatever is said of no one ladder. */
export const isFirst = ({ nth }: Part): boolean => nth === 1

/** The ladders and pages that are of a part. */
export const partOf = <Of extends { readonly ladders: readonly { readonly id: string }[]; readonly pages: readonly unknown[] }>({ ladders, pages }: Of, part: Part): Pick<Of, 'ladders' | 'pages'> => ({
  ladders: ladders.filter(({ id }) => isOfPart(id, part)),
  pages: isFirst(part) ? pages : [],
})

/** A part as it is written, such as `2/8`; undefined where it is none. */
export function readPart(text: string): Part | undefined {
  const [, nth, of] = /^([1-9]\d{0,3})\/([1-9]\d{0,3})$/.exec(text) ?? []
  const part = { nth: Number(nth), of: Number(of) }
  return nth !== undefined && part.nth <= part.of && part.of <= MOST_PARTS ? part : undefined
}
