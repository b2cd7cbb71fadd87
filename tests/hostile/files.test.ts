import { execFileSync } from 'node:child_process'
import { chmodSync, mkdirSync, symlinkSync } from 'node:fs'
import { createServer } from 'node:net'
import path from 'node:path'
import { held } from './held.ts'
import { LADDER, LADDER_FILE, write } from './place.ts'

/** Root reads everything; then there is no file that may not be opened. */
const mayReadAll = process.getuid?.() === 0

/** What is no plain file is neither read nor followed, wherever it leads. */
held([
  { says: 'a ladder that is a link to a secret', files: {}, prepare: (workspace, room) => (write(room, { 'secret.md': LADDER.replace('hollow-hold', 'secret') }), symlinkSync(path.join(room, 'secret.md'), path.join(workspace, 'ladders/b.md'))), finds: ['?'] },
  { says: 'a ladder that is a link to nothing', files: {}, prepare: (workspace) => symlinkSync('nowhere', path.join(workspace, 'ladders/b.md')), finds: ['?'] },
  { says: 'a ladder that is a link to itself', files: {}, prepare: (workspace) => symlinkSync('b.md', path.join(workspace, 'ladders/b.md')), finds: ['?'] },
  { says: 'a folder of ladders that is a link', files: {}, prepare: (workspace, room) => (write(room, { 'away/b.md': LADDER }), symlinkSync(path.join(room, 'away'), path.join(workspace, 'ladders/away'))), finds: ['?'] },
  { says: 'a folder that leads back to what it lies in', files: {}, prepare: (workspace) => symlinkSync('..', path.join(workspace, 'ladders/loop')), finds: ['?'] },
  { says: 'ladders that are, as a whole, a link', files: { [LADDER_FILE]: undefined }, prepare: (workspace, room) => (write(room, { 'away/b.md': LADDER }), symlinkSync(path.join(room, 'away'), path.join(workspace, 'ladders'))), finds: ['?'] },
  { says: 'a handbook that is a link', files: { 'handbook.yaml': undefined }, prepare: (workspace, room) => (write(room, { 'h.yaml': 'title: x\n' }), symlinkSync(path.join(room, 'h.yaml'), path.join(workspace, 'handbook.yaml'))), finds: ['?'] },
  { says: 'a ladder that is a pipe nobody writes to', files: {}, prepare: (workspace) => void execFileSync('mkfifo', [path.join(workspace, 'ladders/b.md')]), finds: ['?'] },
  { says: 'a handbook that is a pipe', files: { 'handbook.yaml': undefined }, prepare: (workspace) => void execFileSync('mkfifo', [path.join(workspace, 'handbook.yaml')]), finds: ['?'] },
  { says: 'a ladder that is a link to a device without end', files: {}, prepare: (workspace) => symlinkSync('/dev/zero', path.join(workspace, 'ladders/b.md')), finds: ['?'] },
  { says: 'a ladder that is a socket', files: {}, prepare: (workspace) => void createServer().listen(path.join(workspace, 'ladders/b.md')).unref(), finds: ['?'] },
  { says: 'a folder named as a ladder', files: {}, prepare: (workspace) => void mkdirSync(path.join(workspace, 'ladders/b.md')), finds: ['?'] },
  { says: 'a folder named as the handbook', files: { 'handbook.yaml': undefined }, prepare: (workspace) => void mkdirSync(path.join(workspace, 'handbook.yaml')), finds: ['?'] },
  { says: 'a ladder of 1 GB, nothing but holes', files: {}, prepare: (workspace) => void execFileSync('truncate', ['-s', '1G', path.join(workspace, 'ladders/b.md')]), finds: ['?'] },
  ...(mayReadAll ? [] : [{ says: 'a ladder that may not be read', files: { 'ladders/b.md': LADDER }, prepare: (workspace: string) => chmodSync(path.join(workspace, 'ladders/b.md'), 0), finds: ['?'] }]),
])
