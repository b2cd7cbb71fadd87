import { CodeActionKind, CompletionItemKind, DiagnosticSeverity, ErrorCodes, LSPErrorCodes, MarkupKind, ResponseError, type CodeAction, type CompletionItem, type Diagnostic, type Hover, type Location, type Range, type TextEdit, type WorkspaceEdit } from 'vscode-languageserver/node'
import { TextDocument } from 'vscode-languageserver-textdocument'
import { rules } from '../check/index.ts'
import { completions } from '../editor/complete.ts'
import { definitions, references, type Span } from '../editor/find.ts'
import { hover } from '../editor/hover.ts'
import { editSpan, lineStarts, marked } from '../editor/mark.ts'
import type { EditorFile } from '../editor/outline.ts'
import { renamable, renamed } from '../editor/rename.ts'
import type { Finding } from '../ladder/finding.ts'
import { isMissing } from '../quantity/outcome.ts'
import { nameOf, type Desk, type Opened } from './editor-desk.ts'
import type { EditorState, EditorWorkspace } from './editor-workspace.ts'

/** What the protocol asks of one place in one file. Positions count lines from 0, and UTF-16 units within them. */
export type Asked = { readonly desk: Desk; readonly opened: Opened; readonly position: Range['start'] }

const documentOf = (file: EditorFile): TextDocument => TextDocument.create('', 'markdown', 0, file.text())
const rangeIn = (document: TextDocument, { from, to }: { readonly from: number; readonly to: number }): Range => ({ start: document.positionAt(from), end: document.positionAt(to) })

/** The file that is asked about, and the offset in it. */
async function placed({ opened, position }: Asked): Promise<{ readonly files: readonly EditorFile[]; readonly file: EditorFile; readonly offset: number; readonly document: TextDocument } | undefined> {
  const { files } = await opened.workspace.around()
  const file = files.find((candidate) => nameOf(opened.workspace, candidate) === opened.name)
  if (!file) return undefined
  const document = documentOf(file)
  return { files, file, document, offset: document.offsetAt(position) }
}

const KINDS = { key: CompletionItemKind.Property, value: CompletionItemKind.Value, word: CompletionItemKind.Text } as const

export async function completionsAt(asked: Asked): Promise<CompletionItem[]> {
  const at = await placed(asked)
  if (!at) return []
  return completions(at.file, at.offset, await asked.opened.workspace.around()).map(({ label, detail, says, kind, insert, from, to }) => ({
    label,
    kind: KINDS[kind],
    ...(detail === undefined ? {} : { detail }),
    ...(says === undefined ? {} : { documentation: { kind: MarkupKind.PlainText, value: says } }),
    textEdit: { range: rangeIn(at.document, { from, to }), newText: insert },
  }))
}

export async function hoverAt(asked: Asked): Promise<Hover | undefined> {
  const at = await placed(asked)
  if (!at) return undefined
  const found = hover(at.file, at.offset, await asked.opened.workspace.around())
  return found && { contents: { kind: MarkupKind.Markdown, value: found.says }, range: rangeIn(at.document, found) }
}

const locations = ({ desk, opened }: Asked, spans: readonly Span[]): Location[] => spans.map((span) => ({ uri: desk.uriOf(nameOf(opened.workspace, span.file)), range: rangeIn(documentOf(span.file), span) }))

export async function definitionsAt(asked: Asked): Promise<Location[]> {
  const at = await placed(asked)
  return at ? locations(asked, definitions(at.file, at.offset, at.files)) : []
}

export async function referencesAt(asked: Asked): Promise<Location[]> {
  const at = await placed(asked)
  return at ? locations(asked, references(at.file, at.offset, at.files)) : []
}

const NOWHERE = 'This file is in no workspace.'

export async function renamableAt(asked: Asked): Promise<{ readonly range: Range; readonly placeholder: string }> {
  const at = await placed(asked)
  if (!at) throw new ResponseError(ErrorCodes.InvalidParams, NOWHERE)
  const found = renamable(at.file, at.offset, at.files)
  if (isMissing(found)) throw new ResponseError(LSPErrorCodes.RequestFailed, found.missing)
  return { range: rangeIn(at.document, found), placeholder: found.rung }
}

export async function renameAt(asked: Asked, name: string): Promise<WorkspaceEdit> {
  const at = await placed(asked)
  if (!at) throw new ResponseError(ErrorCodes.InvalidParams, NOWHERE)
  const spans = renamed(at.file, at.offset, name, at.files)
  if (isMissing(spans)) throw new ResponseError(LSPErrorCodes.RequestFailed, spans.missing)
  const changes: Record<string, TextEdit[]> = {}
  for (const { uri, range } of locations(asked, spans)) (changes[uri] ??= []).push({ range, newText: name })
  return { changes }
}

/** A finding as an editor marks it: an error where a file cannot be read, else a warning; what cannot be told, for information. */
function diagnostic(finding: Finding, document: TextDocument, starts: readonly number[], told: boolean): Diagnostic {
  const severity = !told ? DiagnosticSeverity.Information : rules.some(({ name }) => name === finding.rule) ? DiagnosticSeverity.Warning : DiagnosticSeverity.Error
  return { range: rangeIn(document, marked(document.getText(), starts, finding)), severity, code: finding.rule, source: 'rungbook', message: finding.message }
}

/** Everything found in a workspace, by the file it stands in. */
export function diagnosticsOf(workspace: EditorWorkspace, { files, findings, untold }: EditorState): ReadonlyMap<string, Diagnostic[]> {
  const found = new Map<string, Diagnostic[]>()
  const byName = new Map(files.map((file) => [file.shown, file]))
  const [told, open] = [byFile(findings), byFile(untold)]
  for (const shown of new Set([...told.keys(), ...open.keys()])) {
    const document = TextDocument.create('', 'markdown', 0, byName.get(shown)?.text() ?? '')
    const starts = lineStarts(document.getText())
    found.set(nameOf(workspace, { shown }), [...(told.get(shown) ?? []).map((finding) => diagnostic(finding, document, starts, true)), ...(open.get(shown) ?? []).map((finding) => diagnostic(finding, document, starts, false))])
  }
  return found
}

function byFile(findings: readonly Finding[]): ReadonlyMap<string, readonly Finding[]> {
  const grouped = new Map<string, Finding[]>()
  for (const finding of findings) {
    const others = grouped.get(finding.file)
    if (others) others.push(finding)
    else grouped.set(finding.file, [finding])
  }
  return grouped
}

/** The remedies that are one edit, for the findings in a stretch of one of our own files. */
export async function fixesIn({ desk, opened }: Omit<Asked, 'position'>, { start, end }: Range): Promise<CodeAction[]> {
  const { files, findings } = await opened.workspace.state()
  const file = files.find((candidate) => candidate.own && nameOf(opened.workspace, candidate) === opened.name)
  if (!file) return []
  const document = documentOf(file)
  const starts = lineStarts(file.text())
  return findings.flatMap((finding): CodeAction[] => {
    const { edit } = finding
    const span = edit && finding.file === file.shown ? editSpan(file.text(), starts, edit) : undefined
    if (!edit || !span) return []
    const range = rangeIn(document, span)
    if (range.end.line < start.line || range.start.line > end.line) return []
    return [{ title: `Write "${edit.text}" in place of "${edit.old}"`, kind: CodeActionKind.QuickFix, isPreferred: true, diagnostics: [diagnostic(finding, document, starts, true)], edit: { changes: { [desk.uriOf(opened.name)]: [{ range, newText: edit.text }] } } }]
  })
}
