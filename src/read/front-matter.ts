import { atTop, type Reading } from './text.ts'

/** A file cut in two. Lines count from 1; `body_line` is the first line of the body. */
export type Cut = { readonly yaml: string; readonly yaml_line: number; readonly body: string; readonly body_line: number }

const RULE = 'front-matter-is-there'

const TORN = 'The file is in the middle of a merge: two versions of it stand here. Keep one of each pair, and delete the lines that begin with <<<<<<<, ======= and >>>>>>>.'

/**
 * Cuts a Markdown file into its front matter and its body.
 *
 * Shape   text to two texts, or one finding: a merge not finished, no front matter, another kind of fence, or no closing line.
 */
export function cutFrontMatter(file: string, text: string): Reading<Cut> {
  const lines = text.split('\n')
  const torn = lines.findIndex((line) => /^<{7} /.test(line))
  if (torn >= 0 && lines.some((line, index) => index > torn && /^>{7} /.test(line))) return { findings: [atTop(file, 'files-are-text', TORN, torn + 1)] }
  const fence = lines[0]?.trimEnd()
  if (fence !== '---') {
    const other = /^(---\S+|\+\+\+|;;;)/.exec(fence ?? '')
    const message = other
      ? `The file begins with "${other[0].slice(0, 12)}". Begin it with a line of three hyphens, ---, and write the front matter as YAML.`
      : 'The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.'
    return { findings: [atTop(file, RULE, message)] }
  }
  const end = lines.findIndex((line, index) => index > 0 && line.trimEnd() === '---')
  if (end < 0) return { findings: [atTop(file, RULE, 'The front matter is not closed. Put a line of three hyphens, ---, after its last key.')] }
  return { value: { yaml: lines.slice(1, end).join('\n'), yaml_line: 2, body: lines.slice(end + 1).join('\n'), body_line: end + 2 }, findings: [] }
}
