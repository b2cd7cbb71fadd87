import { readFileSync } from 'node:fs'
import path from 'node:path'

export const ROOT = path.resolve(import.meta.dirname, '../..')

/** A package as the lockfile has it. `dev` where only the tests need it. */
export type Locked = { readonly version: string; readonly license?: string; readonly integrity?: string; readonly resolved?: string; readonly dev?: boolean; readonly optional?: boolean; readonly hasInstallScript?: boolean; readonly link?: boolean }

export type Manifest = { readonly dependencies: Readonly<Record<string, string>>; readonly devDependencies: Readonly<Record<string, string>> }

const json = <Value>(file: string): Value => JSON.parse(readFileSync(path.join(ROOT, file), 'utf8')) as Value

export const manifest = (): Manifest => json('package.json')

type Lockfile = { readonly lockfileVersion: number; readonly packages: Readonly<Record<string, Locked>> }

/** Every package in the lockfile, by where it is installed; the root apart. */
export function locked(): { readonly root: Manifest; readonly packages: readonly (readonly [place: string, Locked])[] } {
  const { packages } = json<Lockfile>('package-lock.json')
  return { root: packages[''] as unknown as Manifest, packages: Object.entries(packages).filter(([place]) => place !== '') }
}

/** The name of a package from where it is installed. */
export const nameAt = (place: string): string => place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length)
