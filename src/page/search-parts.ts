/** Ladders whose pages stand in one search index, whatever else there is. Chosen by us: a part is made again for a change to one of its pages, and each part is a few files more for who searches. */
const IN_ONE = 256
/** Ladders above which the parts grow too, so that a search loads few files of each and a change still has few pages indexed. Chosen by us. */
const MANY = 1024

/** How many parts the search index of so many ladders has: few ladders have one, and the number doubles seldom. */
export const searchParts = (ladders: number): number => (ladders <= IN_ONE ? 1 : 2 * searchParts(Math.ceil(ladders / (ladders > MANY ? 4 : 2))))
