import type { Places } from './finding.ts'
import type { Spoken, Translated, WordLists } from './translation.ts'
import type { Demand, Entry, Handbook, LadderFields, PageFields, RungFields, Supervision } from './schema.ts'

/** Markdown as the coach wrote it. */
export type Markdown = string

/** What is seen, why, what to say, and what to do if it stays. */
export type Fault = { readonly seen: string; readonly cause: string; readonly say: string; readonly remedy: string }

/** The prose of one rung, by the headings a coach uses. A section that was not written is undefined. */
export type RungWords = {
  readonly intro: Markdown
  readonly set_up: Markdown | undefined
  readonly full_rep: readonly string[] | undefined
  readonly cues: readonly string[] | undefined
  readonly faults: readonly Fault[] | undefined
  readonly notes: readonly { readonly title: string; readonly body: Markdown }[]
}

/** One version of a movement. */
export type Rung = {
  readonly id: string
  readonly title: string
  /** The rungs it follows; empty for the first. */
  readonly after: readonly string[]
  readonly demand: readonly Demand[]
  readonly entry: Entry
  readonly load: RungFields['load']
  readonly supervision: Supervision | undefined
  readonly equipment: readonly string[]
  readonly form: readonly string[]
  readonly cautions: readonly string[]
  readonly first_side: string | undefined
  readonly words: RungWords | undefined
}

/** A safety note a layer took out, with the name of who answers for it. */
export type WithdrawnNote = { readonly note: string; readonly because: string; readonly by: string; readonly layer: string }

/** One thing a layer did: a key it wrote, a rung it changed, added or withdrew (by the title it has or had), a safety note it took out. */
export type Did =
  | { readonly key: string }
  | { readonly changed: string; readonly title: string }
  | { readonly added: string; readonly title: string }
  | { readonly withdrawn: string; readonly title: string; readonly heir: string }
  | { readonly note: string }

/** What a layer changed in a ladder it did not write. */
export type Amended = { readonly by: string; readonly because: string; readonly what: readonly Did[] }

/** The ordered versions of one movement. */
export type Ladder = Omit<LadderFields, 'rungs'> & {
  readonly intro: Markdown
  readonly rungs: readonly Rung[]
  readonly amended: readonly Amended[]
  readonly withdrawn_notes: readonly WithdrawnNote[]
  /** The organisation whose layer wrote it. */
  readonly layer: string
  readonly places: Places
  /** One for each other language of the handbook; not there where it has one language. */
  readonly translations?: readonly Translated[]
  /** Which language it was put into, if it was. */
  readonly spoken?: Spoken
}

/** A stretch of a page's body that is in one language. */
export type Stretch = { readonly language: string; readonly body: Markdown }

/** A hand-written page of the handbook. */
export type Page = PageFields & { readonly id: string; readonly body: Markdown; readonly layer: string; readonly places: Places; readonly translations?: readonly Translated[]; readonly spoken?: Spoken; readonly stretches?: readonly Stretch[] }

/** Everything that was read: one organisation's handbook, its layers joined, and its logo as an SVG that may stand in a page. */
export type Curriculum = { readonly handbook: Handbook; readonly logo?: string; readonly ladders: readonly Ladder[]; readonly pages: readonly Page[]; readonly words?: WordLists }

/** A file of a workspace, as it lies on disk. `file` is relative to its workspace, with forward slashes; `shown` is how findings name it from elsewhere. */
export type SourceFile = { readonly file: string; readonly bytes: Uint8Array; readonly shown?: string }

/** One workspace: its own files, named by the organisation once its handbook.yaml is read. */
export type Layer = { readonly files: readonly SourceFile[] }
