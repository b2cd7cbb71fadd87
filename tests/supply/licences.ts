import { existsSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { locked, nameAt, ROOT } from './lockfile.ts'

/** Licences that ask for no more than a notice. */
const PERMISSIVE = ['MIT', 'ISC', 'BSD-2-Clause', 'BSD-3-Clause', 'Apache-2.0', '0BSD', 'BlueOak-1.0.0', 'Unlicense', 'Python-2.0', 'PSF-2.0', '(MIT OR Apache-2.0)', '(MPL-2.0 OR Apache-2.0)']

/** Packages with another licence, and why that is well. A pattern of names, what they say, and whether only the tests need them. */
const OTHERWISE: readonly { readonly name: RegExp; readonly licence: string; readonly tests_only: boolean; readonly because: string }[] = [
  { name: /^@img\/sharp-libvips-/, licence: 'LGPL-3.0-or-later', tests_only: false, because: 'a library of its own that can be exchanged; its bytes are in nothing we publish' },
  { name: /^@img\/sharp-win32-/, licence: 'Apache-2.0 AND LGPL-3.0-or-later', tests_only: false, because: 'the same, with the library beside it' },
  { name: /^@img\/sharp-wasm32$/, licence: 'Apache-2.0 AND LGPL-3.0-or-later AND MIT', tests_only: false, because: 'the same, where nothing else runs; not installed otherwise' },
  { name: /^lightningcss/, licence: 'MPL-2.0', tests_only: true, because: 'part of the test runner; unchanged' },
  { name: /^axe-core$/, licence: 'MPL-2.0', tests_only: true, because: 'looks at pages in tests; unchanged' },
]

/** The licence a package says it has; where its manifest is silent, that of the licence file beside it. */
function licenceOf(place: string, said: string | undefined): string {
  if (said !== undefined) return said
  const folder = path.join(ROOT, place)
  const file = existsSync(folder) ? readdirSync(folder).find((name) => /^licen[cs]e/i.test(name)) : undefined
  return file !== undefined && /^The MIT License|^MIT License/m.test(readFileSync(path.join(folder, file), 'utf8')) ? 'MIT' : 'none'
}

/** Packages whose licence is not among those we can keep to, each as "name licence". */
export function strangeLicences(): string[] {
  return locked().packages.flatMap(([place, { license, dev }]) => {
    const [name, licence] = [nameAt(place), licenceOf(place, license)]
    if (PERMISSIVE.includes(licence)) return []
    return OTHERWISE.some((each) => each.name.test(name) && each.licence === licence && (!each.tests_only || dev === true)) ? [] : [`${name} ${licence}`]
  })
}

/** How many packages have each licence, the commonest first. */
export function licenceCounts(): readonly (readonly [licence: string, count: number])[] {
  const counts = new Map<string, number>()
  for (const [place, { license }] of locked().packages) {
    const licence = licenceOf(place, license)
    counts.set(licence, (counts.get(licence) ?? 0) + 1)
  }
  return [...counts].toSorted((a, b) => b[1] - a[1])
}
