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
const NAMES = ['chromium', 'chromium-browser', 'google-chrome']

/** The program of a Chromium on this machine: CHROMIUM_PATH, the usual places, or the PATH. */
export function chromiumPath(): string | undefined {
  const named = process.env.CHROMIUM_PATH
  if (named !== undefined) return existsSync(named) ? named : undefined
  const onPath = (process.env.PATH ?? '').split(path.delimiter).flatMap((folder) => NAMES.map((name) => path.join(folder, name)))
  return [...PLACES, ...onPath].find((place) => existsSync(place))
}

/** What to do where there is none. */
export const NO_CHROMIUM = 'Printing to PDF needs a Chromium: install one, or set CHROMIUM_PATH to its program, or build without --pdf and print the cards from a browser.'

/** How a Chromium is started so that it asks nothing of the network. The superuser's has no sandbox to stand in. */
export const quietly = (): string[] => [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
]
