import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import path from 'node:path'
import type { SourceFile } from '../ladder/curriculum.ts'
import { compareText } from '../ladder/finding.ts'
import { HANDBOOK_FILE, readHandbook } from '../read/read-curriculum.ts'
import { atTop, MOST_BYTES } from '../read/text.ts'
import { disk, readWorkspace, WORD_LIST, type Reader, type Workspace } from './disk.ts'

/** A run of git: what it wrote, or why it failed, in one sentence for a person. */
type Ran = { readonly out: Buffer } | { readonly failed: string }

/** Plumbing only, told to run nothing of the repository's own: no pager, no monitor, no hooks, no fetching. */
const SAFELY = ['--no-pager', '--literal-pathspecs', '-c', 'core.fsmonitor=false', '-c', `core.hooksPath=${path.sep}dev${path.sep}null`, '-c', 'protocol.allow=never']
const QUIETLY = { GIT_OPTIONAL_LOCKS: '0', GIT_TERMINAL_PROMPT: '0', GIT_NO_LAZY_FETCH: '1', GIT_PAGER: 'cat', LC_ALL: 'C' }
/** What a hook sets for its own repository; ours is the one the folder lies in. */
const NOT_OURS = { GIT_DIR: undefined, GIT_WORK_TREE: undefined, GIT_INDEX_FILE: undefined }

function git(folder: string, words: readonly string[], input = ''): Promise<Ran> {
  return new Promise((resolve) => {
    const child = spawn('git', [...SAFELY, ...words], { cwd: folder, env: { ...process.env, ...QUIETLY, ...NOT_OURS } })
    const out: Buffer[] = []
    let note = ''
    child.stdout.on('data', (bytes: Buffer) => out.push(bytes))
    child.stderr.on('data', (bytes: Buffer) => (note += bytes.toString()))
    child.on('error', () => resolve({ failed: existsSync(folder) ? 'git is not installed here, so nothing can be compared.' : `There is no folder "${folder}".` }))
    child.on('close', (code) => resolve(code === 0 ? { out: Buffer.concat(out) } : { failed: note.trim() }))
    child.stdin.on('error', () => undefined)
    child.stdin.end(input)
  })
}

/** A repository and a commit in it. */
export type Commit = { readonly top: string; readonly commit: string }

/** Finds the commit a revision names, or says in one sentence why it cannot. */
export async function commitOf(folder: string, revision: string): Promise<Commit | { readonly failed: string }> {
  const top = await git(folder, ['rev-parse', '--show-toplevel'])
  if ('failed' in top) return { failed: /^(git is not|There is no folder)/.test(top.failed) ? top.failed : 'This folder is not in a git repository, so there is nothing to compare with.' }
  const found = await git(folder, ['rev-parse', '--verify', '--quiet', '--end-of-options', `${revision}^{commit}`])
  if (!('failed' in found)) return { top: top.out.toString().trim(), commit: found.out.toString().trim() }
  const shallow = await git(folder, ['rev-parse', '--is-shallow-repository'])
  const reason = !('failed' in shallow) && shallow.out.toString().trim() === 'true' ? ' This clone is shallow: fetch more of its history.' : ' Name a branch, a tag or a commit.'
  return { failed: `There is no revision "${revision}" here.${reason}` }
}

/** What a workspace is read from. */
const READ = ['ladders', 'content', HANDBOOK_FILE]

/** Regular files of one folder at a commit: object and name. Links, submodules and what is hidden are left out, as on disk. */
async function listed({ top, commit }: Commit, folder: string, under: readonly string[] = READ): Promise<{ name: string; object: string }[]> {
  const inside = path.relative(top, folder).replaceAll('\\', '/')
  const prefix = inside === '' ? '' : `${inside}/`
  const tree = (...words: string[]): Promise<Ran> => git(top, ['ls-tree', '-z', '--full-tree', ...words])
  const lists = under === READ ? tree(commit, ...(prefix === '' ? [] : ['--', prefix])) : { failed: 'not asked for' }
  const [within, beside] = await Promise.all([tree('-r', commit, '--', ...under.map((name) => prefix + name)), lists])
  const files = (ran: Ran, isOurs: (name: string) => boolean): { name: string; object: string }[] =>
    'failed' in ran
      ? []
      : ran.out.toString().split('\0').flatMap((line) => {
          const match = /^100(?:644|755) blob ([0-9a-f]+)\t(.*)$/s.exec(line)
          const name = match?.[2]?.slice(prefix.length)
          return match?.[1] && name !== undefined && isOurs(name) ? [{ name, object: match[1] }] : []
        })
  return [...files(within, (name) => under.includes(name) || isRead(name)), ...files(beside, (name) => WORD_LIST.test(name))]
}

/** A Markdown file that is neither hidden nor in a folder that is, nor in one that is itself named like a file. */
const isRead = (name: string): boolean => name.endsWith('.md') && !name.split('/').some((part, index, parts) => part.startsWith('.') || (index < parts.length - 1 && part.endsWith('.md')))

/** Blobs in the order asked for, out of one run; undefined where this clone does not hold one. */
async function blobs({ top }: Commit, objects: readonly string[]): Promise<(Buffer | undefined)[]> {
  if (objects.length === 0) return []
  const ran = await git(top, ['cat-file', '--batch'], `${objects.join('\n')}\n`)
  if ('failed' in ran) return []
  const found: (Buffer | undefined)[] = []
  for (let at = 0; at < ran.out.length; ) {
    const end = ran.out.indexOf(10, at)
    const size = Number(/ blob (\d+)$/.exec(ran.out.subarray(at, end).toString())?.[1] ?? Number.NaN)
    if (!Number.isFinite(size)) {
      found.push(undefined)
      at = end + 1
      continue
    }
    found.push(ran.out.subarray(end + 1, end + 1 + Math.min(size, MOST_BYTES * 4)))
    at = end + 1 + size + 1
  }
  return found
}

/** The logo that handbook.yaml asks for at a commit. */
async function logoAt(commit: Commit, folder: string): Promise<{ name: string; object: string }[]> {
  const [handbook] = await listed(commit, folder, [HANDBOOK_FILE])
  const [bytes] = handbook ? await blobs(commit, [handbook.object]) : []
  const logo = bytes && readHandbook({ file: HANDBOOK_FILE, bytes }).value?.logo
  return logo === undefined ? [] : listed(commit, folder, [logo])
}

/** Reads folders of the repository as they were at a commit, without a checkout. */
function readerAt(commit: Commit): Reader {
  return {
    async real(folder) {
      return (await listed(commit, folder)).length > 0 ? folder : undefined
    },
    async files(folder, shown, findings) {
      const names = [...(await listed(commit, folder)), ...(await logoAt(commit, folder))].toSorted((a, b) => compareText(a.name, b.name))
      const bytes = await blobs(commit, names.map(({ object }) => object))
      return names.flatMap(({ name }, index): SourceFile[] => {
        const found = bytes[index]
        if (found === undefined) findings.push(atTop(path.join(shown, name).replaceAll('\\', '/'), 'files-are-text', 'This file is not in this clone at that revision. Fetch it, and compare again.'))
        return found === undefined ? [] : [{ file: name, bytes: found, ...(shown === '' ? {} : { shown: path.join(shown, name).replaceAll('\\', '/') }) }]
      })
    },
  }
}

/** A workspace as it was at a commit, and what it extends: at the same commit where that lies in the repository, else as it is on disk. What is installed lies beside the repository, not in it. */
export async function readWorkspaceAt(commit: Commit, folder: string): Promise<Workspace> {
  const then = readerAt(commit)
  const installed = (place: string): boolean => path.relative(commit.top, place).split(path.sep).includes('node_modules')
  const inside = (place: string): boolean => (place === commit.top || place.startsWith(commit.top + path.sep)) && (place === folder || !installed(place))
  return readWorkspace(folder, {
    real: async (place) => (inside(place) ? then.real(place) : disk.real(place)),
    files: (place, shown, findings) => (inside(place) ? then.files(place, shown, findings) : disk.files(place, shown, findings)),
  })
}
