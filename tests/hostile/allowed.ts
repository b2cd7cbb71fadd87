import { defaultTreeAdapter, parse, type DefaultTreeAdapterMap } from 'parse5'

type Node = DefaultTreeAdapterMap['node']

/** Elements of a page, and the attributes each may have besides those any may have. What is not here does not belong in a handbook. */
const ELEMENTS: Readonly<Record<string, string>> = {
  a: 'href rel hreflang title', abbr: 'title', article: '', aside: '', blockquote: '', body: 'data-ladder data-root', br: '', button: 'type', caption: '', circle: 'cx cy r', code: '', dd: '', defs: '', del: '',
  details: 'open', div: '', dl: '', dt: '', ellipse: 'cx cy rx ry', em: '', fieldset: '', figcaption: '', figure: '', footer: '', form: 'action autocomplete method novalidate', g: 'transform', h1: '', h2: '', h3: '', h4: '', h5: '', h6: '', head: '', header: '', hr: '', html: 'dir',
  img: 'src srcset sizes alt title width height loading decoding', input: 'accept autocomplete checked inputmode maxlength max min name required size step type value', label: 'for', legend: '', li: 'value', line: 'x1 x2 y1 y2', link: 'as href rel title type hreflang', main: '', mark: '', noscript: '',
  marker: 'markerHeight markerUnits markerWidth orient refX refY viewBox', meta: 'charset content http-equiv name property', nav: '', ol: 'start', optgroup: 'label', option: 'value', output: 'for', p: '', path: 'd marker-end marker-start', polygon: 'points transform', picture: '', polyline: 'points', pre: '', rect: 'height rx ry width x y', s: '',
  script: 'src type', section: '', select: 'autocomplete name', small: '', source: 'srcset sizes type media', span: '', strong: '', sub: '', summary: '', sup: '', svg: 'height width xmlns viewBox preserveAspectRatio shape-rendering font-family font-size', table: '', tbody: '', td: 'colspan', text: 'text-anchor x y', textarea: 'name rows maxlength', tfoot: '', th: 'scope colspan', thead: '', title: '', tr: '', tspan: 'dy x y', ul: '',
}
const ANY = /^(class|id|hidden|lang|role|tabindex|aria-[a-z]+|data-[a-z-]+|fill|fill-rule|stroke|stroke-width|stroke-linecap|stroke-linejoin|dir)$/
/** Attributes that a browser follows, and where they may lead. */
const FOLLOWED = /^(href|src|srcset|action)$/
const LEADS = /^(https:\/\/|mailto:|tel:|[^:]*$)/i

/** The one script of ours that is no module: it must be there before what is below it is drawn. */
const isOwnScript = (attrs: readonly { readonly name: string; readonly value: string }[]): boolean => attrs.length === 1 && attrs.every(({ name, value }) => name === 'src' && /^(\.\.\/)+assets\/kept\.js$/.test(value))

/**
 * What stands in a page that does not belong there: an element, an attribute, a place it leads to, words that run or style, an id twice.
 *
 * Shape   the bytes of a page, to one line for each stranger, by the same parser rules that browsers have.
 */
export function strangersIn(page: string): string[] {
  const found: string[] = []
  const ids = new Set<string>()
  const walk = (node: Node): void => {
    if (defaultTreeAdapter.isElementNode(node)) found.push(...strangersOf(node, ids))
    if ('childNodes' in node) for (const child of node.childNodes) walk(child)
  }
  walk(parse(page, { onParseError: ({ code, startLine }) => void found.push(`parsed with an error: ${code}, line ${startLine}`) }))
  return found
}

function strangersOf(element: DefaultTreeAdapterMap['element'], ids: Set<string>): string[] {
  const { tagName, attrs } = element
  const own = Object.hasOwn(ELEMENTS, tagName) ? ELEMENTS[tagName]?.split(' ') : undefined
  if (!own) return [`<${tagName}>`]
  const found = attrs.flatMap(({ name, value }) => {
    if (!own.includes(name) && !ANY.test(name)) return [`<${tagName} ${name}>`]
    if (FOLLOWED.test(name) && (!LEADS.test(value) || /(^|, )(\s|\\|\/\/)/.test(value))) return [`<${tagName} ${name}="${value.slice(0, 60)}">`]
    if (name === 'id' && ids.size === ids.add(value).size) return [`id ${value} twice`]
    if (tagName !== 'a' && FOLLOWED.test(name) && /:/.test(value)) return [`<${tagName} ${name}="${value.slice(0, 60)}"> leads away`]
    return /^(url|expression)\(/i.test(value) && !/^url\(#[a-zA-Z0-9_-]+\)$/.test(value) ? [`${name}="${value.slice(0, 60)}"`] : []
  })
  const says = element.childNodes.map((child) => ('value' in child ? child.value : '')).join('')
  const type = attrs.find(({ name }) => name === 'type')?.value
  if (tagName === 'script' && (type === 'application/ld+json' ? !isPlainData(says) || attrs.length > 1 : says !== '' || !(type === 'module' || isOwnScript(attrs)))) found.push('a script with words in it')
  if (tagName === 'meta' && attrs.some(({ name, value }) => name === 'http-equiv' && value !== 'Content-Security-Policy')) found.push('a meta that commands')
  return found
}

/** The words of a page's first heading, as its reader sees them. */
export function headingOf(page: string): string | undefined {
  const words = (node: Node): string => ('value' in node ? node.value : 'childNodes' in node ? node.childNodes.map(words).join('') : '')
  const find = (node: Node): string | undefined => (defaultTreeAdapter.isElementNode(node) && node.tagName === 'h1' ? words(node).trim() : 'childNodes' in node ? node.childNodes.map(find).find((found) => found !== undefined) : undefined)
  return find(parse(page))
}

/** Facts for search engines: JSON in which nothing could end the element it stands in, or begin another. */
function isPlainData(says: string): boolean {
  try {
    return typeof JSON.parse(says) === 'object' && !/[<>]/.test(says)
  } catch {
    return false
  }
}
