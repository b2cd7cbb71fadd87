import type { Found, Rule } from './rule.ts'

export const sourcesAreCited: Rule = {
  name: 'sources-are-cited',
  says: 'A measured load names a source that the ladder lists, and each source is listed once.',
  why: 'A number that cannot be followed back cannot be reviewed.',

  check({ sources = [], rungs }) {
    const listed = new Set(sources.map(({ id }) => id))
    const found: Found[] = []
    for (const [index, { id, cite }] of sources.entries()) {
      if (sources.findIndex((other) => other.id === id || other.cite === cite) < index) found.push({ path: ['sources', index], message: `The source "${id}" is listed twice. Keep one.` })
    }
    for (const [index, { title, load }] of rungs.entries()) {
      if (load.model !== 'published' || !('source' in load) || listed.has(String(load.source))) continue
      found.push({ path: ['rungs', index, 'load', 'source'], message: `"${title}" takes its load from "${load.source}", which is not among the ladder's sources. Add it there with its full citation.` })
    }
    return found
  },
}
