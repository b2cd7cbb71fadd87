#!/usr/bin/env node
import { existsSync } from 'node:fs'

if (Number.parseInt(process.versions.node, 10) < 20) {
  process.stderr.write(`Rungbook needs Node 20.19 or later, and this is ${process.versions.node}. Install a newer one from https://nodejs.org, and try again.\n`)
  process.exit(2)
}

// The repository runs its source as it is; the package carries it compiled.
const source = new URL('./bin.ts', import.meta.url)
const compiled = new URL('../../dist/command/bin.js', import.meta.url)
const isSource = existsSync(source)
if (isSource) (await import('tsx/esm/api')).register()
await import(String(isSource ? source : compiled))
