import { execFileSync } from 'node:child_process'
import { locked, nameAt, ROOT } from './lockfile.ts'

type Bill = { readonly dependencies: readonly { readonly ref: string; readonly dependsOn?: readonly string[] }[]; readonly metadata: { readonly component: { readonly 'bom-ref': string }; readonly tools?: unknown }; readonly components: readonly { readonly 'bom-ref': string; readonly name: string; readonly version: string; readonly hashes?: readonly unknown[]; readonly licenses?: readonly unknown[] }[] }

/**
 * What the program is made of, in CycloneDX: every package that is needed to run it, with version, digest and licence, from the lockfile.
 *
 * The same bytes for the same lockfile: the day, a number drawn by chance, the folder's name and the tool that wrote it are left out.
 */
export function billOfMaterials(): string {
  const written = execFileSync('npm', ['sbom', '--sbom-format', 'cyclonedx', '--package-lock-only'], { cwd: ROOT, encoding: 'utf8', maxBuffer: 64 * 1024 * 1024, shell: process.platform === 'win32' })
  const { serialNumber: _, metadata, components, dependencies, ...rest } = JSON.parse(written) as Bill & { serialNumber: string }
  // npm's own --omit dev leaves out what runs and is needed by a test tool too, so what runs is told by the lockfile.
  const runs = new Set(locked().packages.flatMap(([place, { dev, version }]) => (dev === true ? [] : [`${nameAt(place)}@${version}`])))
  const kept = components.filter(({ name, version }) => runs.has(`${name}@${version}`))
  const refs = new Set([...kept.map((each) => each['bom-ref']), metadata.component['bom-ref']])
  const graph = dependencies.filter(({ ref }) => refs.has(ref)).map(({ ref, dependsOn = [] }) => ({ ref, dependsOn: dependsOn.filter((each) => refs.has(each)) }))
  return `${JSON.stringify({ ...rest, metadata: { component: { ...metadata.component, name: 'rungbook' } }, components: kept, dependencies: graph }, null, 2)}\n`
}
