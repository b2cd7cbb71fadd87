import { markdown } from './markdown.ts'

/** Kinds of picture a page may show, by how their files end. */
const KIND = /\.(png|jpe?g|webp|svg)$/i
/** A way that leads out of the workspace, or that one system reads in another way than the next. */
const ASTRAY = /^[/~]|^[a-z][a-z0-9+.-]*:|[\\?#:*"<>|\u0000-\u001f]|\/\/|(^|\/)\.(?!\.?\/)|(^|\/)\.\.?$/i

/**
 * The file of a picture, as findings name files, from the file whose text shows it and the way written there.
 *
 * Shape   "../ladders/row.md" and "pictures/grip.jpg" to "../ladders/pictures/grip.jpg"; undefined where the way is none a picture may take.
 */
export function pictureFile(from: string, href: string): string | undefined {
  const way = markdown.utils.lib.mdurl.decode(href)
  if (ASTRAY.test(way) || !KIND.test(way)) return undefined
  return [...from.split('/').slice(0, -1), ...way.split('/')].reduce<string[]>((path, step) => {
    if (step === '.' || step === '') return path
    return step === '..' && path.length > 0 && path.at(-1) !== '..' ? path.slice(0, -1) : [...path, step]
  }, []).join('/')
}
