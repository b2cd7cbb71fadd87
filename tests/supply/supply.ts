import { spawnSync } from 'node:child_process'
import { writeFileSync } from 'node:fs'
import path from 'node:path'
import { billOfMaterials } from './bill.ts'
import { licenceCounts, strangeLicences } from './licences.ts'
import { ROOT } from './lockfile.ts'

/** Writes sbom.json, counts licences, and asks the registry whether what is installed is what was signed. Fails on a licence we cannot keep to, or a wrong signature. */
writeFileSync(path.join(ROOT, 'sbom.json'), billOfMaterials())
process.stdout.write('sbom.json is written\n')
for (const [licence, count] of licenceCounts()) process.stdout.write(`${String(count).padStart(4)}  ${licence}\n`)
const strange = strangeLicences()
for (const each of strange) process.stdout.write(`not ours to keep to: ${each}\n`)
const signed = spawnSync('npm', ['audit', 'signatures'], { cwd: ROOT, encoding: 'utf8', timeout: 120_000, shell: process.platform === 'win32' })
const said = `${signed.stdout ?? ''}${signed.stderr ?? ''}`.trim()
const wrong = /invalid|tampered/i.test(said)
process.stdout.write(signed.status === 0 ? `${said}\n` : `signatures could not be looked at here${wrong ? ', or are wrong' : ''}: ${said.split('\n')[0] ?? 'no answer'}\n`)
process.exit(strange.length > 0 || wrong ? 1 : 0)
