/** Where in a workspace something stands. Lines and columns count from 1. */
export type Place = { readonly file: string; readonly line: number; readonly column: number }

/** Something a coach can put right: which rule, where, and in words what to do. */
export type Finding = Place & {
  readonly rule: string
  readonly message: string
  /** What it is about, whatever its words and line: "press-up:rungs/floor/load". */
  readonly subject?: string
  /** The one edit that would put it right, where there is one. */
  readonly edit?: Edit
}

/** Put `text` where `old` stands. */
export type Edit = { readonly line: number; readonly column: number; readonly old: string; readonly text: string }

/** A way into a ladder: keys, and rungs by their id. */
export type Path = readonly (string | number)[]

/** Places by path, as `placeOf` looks them up; made when somebody asks, for of most ladders nobody does. */
export type Places = () => ReadonlyMap<string, Place>

/** The last step of a path to where a key's value stands, rather than the key. */
export const VALUE = '='

/** A path as one word, by which places are looked up. */
export const pathKey = (path: Path): string => path.join('/')

/** The place of `path`, or of the nearest thing around it that was written down. */
export function placeOf(places: Places, path: Path): Place {
  const known = places()
  for (let length = path.length; length >= 0; length -= 1) {
    const place = known.get(pathKey(path.slice(0, length)))
    if (place) return place
  }
  throw new Error(`bug: nothing in this file has a place (${pathKey(path)})`)
}

/** By file, then line, column and rule: the same order on every machine. */
export const inOrder = (findings: readonly Finding[]): Finding[] =>
  findings.toSorted((a, b) => compareText(a.file, b.file) || a.line - b.line || a.column - b.column || compareText(a.rule, b.rule) || compareText(a.message, b.message))

/** Compares by code unit, whatever the language of the machine. */
export const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
