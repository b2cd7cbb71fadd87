import type { Curriculum, Ladder, Page } from '../ladder/curriculum.ts'

/** A curriculum as one JSON: what coaches wrote, without what is computed from it. Other languages stay in their files. */
export const curriculumJson = ({ handbook, ladders, pages }: Curriculum): string => `${JSON.stringify({ version: 1, handbook, ladders: ladders.map(saidOfLadder), pages: pages.map(saidOfPage) }, null, 2)}\n`

const saidOfLadder = ({ places: _, translations: __, spoken: ___, ...said }: Ladder) => said
const saidOfPage = ({ places: _, translations: __, spoken: ___, stretches: ____, ...said }: Page) => said
