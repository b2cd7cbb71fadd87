import { readFile } from 'node:fs/promises'
import { rules } from '../check/index.ts'
import type { Examples } from '../page/check-pages.ts'

/** The two ladders by which each rule is tested are also what its page shows, so that there is no third to keep in step. */
export async function ruleExamples(): Promise<Examples> {
  const read = (name: string, kind: 'good' | 'bad'): Promise<string | undefined> => readFile(new URL(`../../tests/check/${name}.${kind}.md`, import.meta.url), 'utf8').catch(() => undefined)
  const found = await Promise.all(rules.map(async ({ name }) => [name, await read(name, 'good'), await read(name, 'bad')] as const))
  return new Map(found.flatMap(([name, good, bad]) => (good === undefined || bad === undefined ? [] : [[name, { good, bad }]])))
}
