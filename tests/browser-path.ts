import { execFileSync, spawnSync } from 'node:child_process'
import { chromiumPath } from '../src/site/chromium.ts'

/** The browser the tests drive: the one that prints cards. */
export const browserPath = chromiumPath

/** Installs one where this machine lets us, which is where we are root on a system with apt-get. */
export function installBrowser(): void {
  if (process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0) return
  execFileSync('apt-get', ['update', '-qq'], { stdio: 'inherit' })
  execFileSync('apt-get', ['install', '-y', '-qq', 'chromium'], { stdio: ['ignore', 'ignore', 'inherit'] })
}
