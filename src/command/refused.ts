import { EOL } from 'node:os'

/** What the machine refused, and what to do about it; `%` stands for what was asked of it. */
const REMEDIES: Readonly<Record<string, string>> = {
  EACCES: 'You may not read or write %. Choose another place, or ask for the right to.',
  EPERM: 'You may not read or write %. Choose another place, or ask for the right to.',
  EROFS: '% cannot be written: the disk is read-only. Choose another place.',
  ENOSPC: '% cannot be written: the disk is full. Free some of it, and try again.',
  EDQUOT: '% cannot be written: your share of the disk is used up. Free some of it, and try again.',
  ENAMETOOLONG: '% has too long a name. Choose a shorter one.',
  ENOTDIR: '% is a file where a folder should be. Name a folder.',
  EISDIR: '% is a folder where a file should be. Name a file.',
  EMFILE: 'Too many files are open at once. Close some programs, and try again.',
}

/** What this machine refused to do, in one sentence with a remedy; undefined where the fault is ours. */
export function refusedBy(error: unknown): string | undefined {
  if (!(error instanceof Error)) return undefined
  const { code, path, port } = error as NodeJS.ErrnoException & { port?: number }
  if (code === 'EADDRINUSE') return `Port ${port} is in use, perhaps by another preview. Stop that one, or name another: --port ${Number(port) + 1}.`
  if (code === 'EACCES' && port !== undefined) return `Port ${port} is not yours to use. Name one above 1023: --port 8080.`
  const remedy = code === undefined ? undefined : REMEDIES[code]
  return remedy?.replace('%', path === undefined ? 'this file' : `"${path.split(EOL)[0]}"`)
}
