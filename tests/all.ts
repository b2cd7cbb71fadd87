import { spawnSync } from 'node:child_process'
import { readFileSync, rmSync } from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { browserPath, installBrowser } from './browser-path.ts'
import { installNginx, nginxPath } from './nginx-path.ts'

/**
 * Runs every test there is: types, lint, then vitest, whose browser tests need a Chromium.
 * The last line counts what passed and what failed.
 */
if (!browserPath()) installBrowser()
if (!browserPath()) {
  process.stderr.write('The tests need a Chromium: install one, or set CHROMIUM_PATH to its program, and run them again.\n')
  process.exit(2)
}

if (!nginxPath()) installNginx()

const step = (name: string, ...words: string[]): boolean => {
  process.stdout.write(`${name}\n`)
  return spawnSync('npx', ['--no-install', ...words], { stdio: 'inherit', shell: process.platform === 'win32' }).status === 0
}

const counts = path.join(os.tmpdir(), `rungbook-tests-${process.pid}.json`)
const typed = step('types', 'tsc', '--noEmit')
const linted = step('lint', 'oxlint', '--deny-warnings', 'src', 'tests', 'pack', 'eleventy.config.ts')
const tested = step('tests', 'vitest', 'run', '--reporter=default', '--reporter=json', `--outputFile.json=${counts}`)
const { numPassedTests = 0, numFailedTests = 0 } = tested || typed ? (JSON.parse(readFileSync(counts, 'utf8')) as { numPassedTests?: number; numFailedTests?: number }) : {}
rmSync(counts, { force: true })
const failed = numFailedTests + [typed, linted].filter((passed) => !passed).length + (!tested && numFailedTests === 0 ? 1 : 0)
if (!nginxPath()) process.stdout.write('NOT RUN: the tests of hosting/nginx.conf, for want of an nginx (Debian: nginx-light)\n')
process.stdout.write(`${numPassedTests} passed, ${failed} failed\n`)
process.exit(failed === 0 ? 0 : 1)
