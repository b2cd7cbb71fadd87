/** Ladders whose pages may stand in one search index. Chosen by us: a part is made again for a change to one of its pages, and each part is a few files more for who searches. */
const MOST_IN_ONE = 256

/** How many parts the search index of so many ladders has: few ladders have one, and the number doubles seldom. */
export const searchParts = (ladders: number): number => (ladders <= MOST_IN_ONE ? 1 : 2 * searchParts(Math.ceil(ladders / 2)))
