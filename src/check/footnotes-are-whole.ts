import { lostFootnotes, type LostFootnote } from '../read/footnotes.ts'
import { writtenIn } from './prose.ts'
import type { Rule } from './rule.ts'

function message({ label, kind }: LostFootnote): string {
  const shown = label.slice(0, 40)
  if (kind === 'twice') return `The footnote "${shown}" is written twice, and only one is shown. Give this one another name.`
  if (kind === 'unused') return `Nothing leads to the footnote "${shown}", so nobody would see it. Put [^${shown}] where it belongs, in the same section, or take it out.`
  return `The mark [^${shown}] leads to no footnote. Write "[^${shown}]: " and its words on a line of their own, in the same section. Cues, full reps, faults and front matter hold none.`
}

export const footnotesAreWhole: Rule = {
  name: 'footnotes-are-whole',
  says: 'Every footnote has one mark or more, and every mark its footnote.',
  why: 'A footnote nothing leads to is not shown, and a mark without one is a riddle.',

  check: (ladder) => writtenIn(ladder).flatMap(({ path, text }) => lostFootnotes(text).map((lost) => ({ path: [...path, 'text', lost.line], message: message(lost) }))),

  checkPage: ({ body }) => lostFootnotes(body).map((lost) => ({ path: ['body', lost.line], message: message(lost) })),
}
