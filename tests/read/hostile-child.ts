import { readFileSync } from 'node:fs'
import { HANDBOOK_FILE, readHandbook } from '../../src/read/read-curriculum.ts'
import { readLadderFile } from '../../src/read/read-ladder.ts'
import { said } from './said.ts'

/** Reads one hostile file from stdin as the first thing this process does, as handbook.yaml or as a ladder, and says what came of it. */
const given = readFileSync(0)
const began = process.cpuUsage()
const { findings } = process.argv[2] === HANDBOOK_FILE ? readHandbook({ file: HANDBOOK_FILE, bytes: given }) : readLadderFile('ladders/a.md', given, 'A club')
const { user, system } = process.cpuUsage(began)
process.stdout.write(JSON.stringify({ findings: said(findings), spent_s: (user + system) / 1e6, most_mb: process.resourceUsage().maxRSS / 1024 }))
