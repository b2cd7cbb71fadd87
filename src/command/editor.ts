import path from 'node:path'
import { workspaceOption } from './curriculum.ts'
import type { Verb } from './verb.ts'

/** `rungbook editor`: speaks the language server protocol over the process's own streams until the editor ends it. */
export const editorVerb: Verb = {
  name: 'editor',
  says: 'serves a text editor: findings as you type, completion, loads on hover, definitions, renames',
  usage: 'rungbook editor [--stdio] [--workspace DIR]\n\n  Started by an editor that speaks the language server protocol, not by hand.\n  --stdio is the only way it speaks, and may be left out.',
  examples: ['rungbook editor', 'rungbook editor --stdio --workspace handbook'],
  alone: true,
  options: { ...workspaceOption, stdio: { type: 'boolean' } },

  async run({ options }, console) {
    const { serveEditor } = await import('../site/editor-server.ts')
    serveEditor(process.stdin, process.stdout, typeof options.workspace === 'string' ? path.resolve(console.folder, options.workspace) : undefined, console.folder)
    return new Promise(() => undefined)
  },
}
