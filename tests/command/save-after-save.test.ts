import { cpSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { expect, test } from 'vitest'
import { checkedWorkspace, nothingSeen, type Seen } from '../../src/command/curriculum.ts'
import { cacheIn } from '../../src/site/cache.ts'
import { liveHandbook, type AssetMemory } from '../../src/site/live-handbook.ts'
import { REPOSITORY, scratch } from '../site/demo.ts'

/** A handbook over the starter curriculum, in two languages, with amendments: everything that one thing may be made of. */
const place = path.join(await scratch(), 'club')
cpSync(path.join(REPOSITORY, 'site-demo'), place, { recursive: true })
const starter = path.relative(place, REPOSITORY)
const written = (name: string, change: (text: string) => string): void => {
  const file = path.join(place, name)
  const before = readFileSync(file, 'utf8')
  const after = change(before)
  if (after === before) throw new Error(`bug: nothing was changed in ${name}`)
  writeFileSync(file, after)
}
written('handbook.yaml', (text) => text.replace(/^extends: .*$/m, `extends: ${starter}`))

const PAGES = ['index.html', 'press-up/index.html', 'es/index.html', 'es/press-up/index.html', 'wet-exit/index.html', 'es/wet-exit/index.html', 'equipment/index.html', 'es/equipment/index.html', 'data/ladders/press-up.json', 'es/safety/index.html']
const assets: AssetMemory = new Map()
const cache = cacheIn(path.join(place, '..', 'cache'))

async function shown(seen?: Seen): Promise<readonly unknown[]> {
  const { measured, findings, workspace, folder } = await checkedWorkspace({ options: {}, rest: [] }, { folder: place, progress: () => undefined }, undefined, { seen })
  const handbook = measured && liveHandbook(measured, { folder, layers: workspace.folders }, cache, assets)
  const pages = await Promise.all(PAGES.map(async (name) => [name, String(await handbook?.file(name))] as const))
  return [findings, ...pages]
}

test('save after save, a preview says and shows what one that begins anew does', { timeout: 240_000 }, async () => {
  const seen = nothingSeen()
  await shown(seen)
  const saves: readonly (readonly [string, () => void])[] = [
    ['a ladder of this layer', () => written('ladders/wet-exit.md', (text) => text.replace(/^title: .*$/m, 'title: Out of an upturned boat'))],
    ['a ladder that amends one below', () => written('ladders/press-up.md', (text) => text.replace(/^because: .*$/m, 'because: the hall has no bars any more'))],
    ['a translation', () => written('ladders/wet-exit.es.md', (text) => text.replace(/^title: .*$/m, 'title: Salir de la barca volcada'))],
    ['the shared words', () => written('words.es.yaml', (text) => `${text}\nbench: banca del club\n`)],
    ['a translation that is gone', () => rmSync(path.join(place, 'ladders/wet-exit.es.md'))],
    ['the organisation’s name', () => written('handbook.yaml', (text) => text.replace(/^organisation: .*$/m, 'organisation: Another club'))],
    ['one language less', () => written('handbook.yaml', (text) => text.replace(/^languages: .*$/m, 'languages: [en]'))],
    ['a ladder that is gone', () => rmSync(path.join(place, 'ladders/wet-exit.md'))],
  ]
  for (const [what, save] of saves) {
    save()
    expect(await shown(seen), what).toEqual(await shown())
  }
})
