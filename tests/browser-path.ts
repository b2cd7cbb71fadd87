import { execFileSync, spawnSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'

/** Where people keep a Chromium. */
const PLACES = [
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
]

/** The browser the tests drive: CHROMIUM_PATH, the usual places, or the PATH. */
export function browserPath(): string | undefined {
  const named = process.env.CHROMIUM_PATH
  if (named !== undefined) return existsSync(named) ? named : undefined
  const onPath = (process.env.PATH ?? '').split(path.delimiter).flatMap((folder) => ['chromium', 'chromium-browser', 'google-chrome'].map((name) => path.join(folder, name)))
  return [...PLACES, ...onPath].find((place) => existsSync(place))
}

/** Installs one where this machine lets us, which is where we are root on a system with apt-get. */
export function installBrowser(): void {
  if (process.getuid?.() !== 0 || spawnSync('apt-get', ['--version']).status !== 0) return
  execFileSync('apt-get', ['update', '-qq'], { stdio: 'inherit' })
  execFileSync('apt-get', ['install', '-y', '-qq', 'chromium'], { stdio: ['ignore', 'ignore', 'inherit'] })
}
