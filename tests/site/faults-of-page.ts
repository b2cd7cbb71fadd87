import { DOMParser } from '@xmldom/xmldom'
import { defaultTreeAdapter, parse, type DefaultTreeAdapterMap } from 'parse5'

type Node = DefaultTreeAdapterMap['node']
type Element = DefaultTreeAdapterMap['element']

/** Elements that have no end. */
const VOID = new Set(['area', 'base', 'br', 'col', 'embed', 'hr', 'img', 'input', 'link', 'meta', 'source', 'track', 'wbr'])
/** What may stand directly in these; a div groups the pairs of a dl. */
const WITHIN: Readonly<Record<string, readonly string[]>> = { ul: ['li'], ol: ['li'], dl: ['dt', 'dd', 'div'], tr: ['th', 'td'], table: ['caption', 'colgroup', 'thead', 'tbody', 'tfoot'], select: ['option', 'optgroup'], picture: ['source', 'img'] }
/** Attributes that name ids on the same page. */
const NAMES_IDS = new Set(['for', 'aria-labelledby', 'aria-describedby', 'aria-controls', 'list', 'headers'])

const attribute = ({ attrs }: Element, wanted: string): string | undefined => attrs.find(({ name }) => name === wanted)?.value
const elementsIn = (node: Node): Element[] => [...(defaultTreeAdapter.isElementNode(node) ? [node] : []), ...('childNodes' in node ? node.childNodes.flatMap(elementsIn) : [])]

/** Why a text is not well-formed XML, or nothing. */
export function faultsOfXml(text: string): string[] {
  const found: string[] = []
  try {
    new DOMParser({ onError: (level, message) => void found.push(`${level}: ${message}`) }).parseFromString(text, 'text/xml')
  } catch (error) {
    if (found.length === 0) found.push(String(error))
  }
  return found
}

/**
 * What is not valid in a page: a parse error, a tag that the parser put in or closed by itself (as it does with a block in a paragraph),
 * a child that may not stand where it does, a control without a name, a reference to no id, an id twice, a drawing that is no XML.
 */
export function faultsOfPage(page: string): string[] {
  const found: string[] = []
  const document = parse(page, { sourceCodeLocationInfo: true, onParseError: ({ code, startLine }) => void found.push(`${code}, line ${startLine}`) })
  const elements = elementsIn(document)
  const ids = elements.flatMap((element) => attribute(element, 'id') ?? [])
  found.push(...ids.filter((id, at) => ids.indexOf(id) !== at).map((id) => `id ${id} twice`))
  const labelled = new Set(elements.flatMap((element) => (element.tagName === 'label' ? (attribute(element, 'for') ?? []) : [])))
  for (const element of elements) found.push(...faultsOf(element, new Set(ids), labelled, page))
  return found
}

function faultsOf(element: Element, ids: ReadonlySet<string>, labelled: ReadonlySet<string>, page: string): string[] {
  const { tagName, sourceCodeLocation: at } = element
  const shown = at ? page.slice(at.startOffset, at.startOffset + 60).replaceAll('\n', ' ') : `<${tagName}>`
  const whole = at?.startTag !== undefined && (at.endTag !== undefined || VOID.has(tagName) || page[at.startTag.endOffset - 2] === '/')
  const strangers = element.childNodes.filter(defaultTreeAdapter.isElementNode).filter((child) => WITHIN[tagName] && !WITHIN[tagName].includes(child.tagName))
  const lost = element.attrs.flatMap(({ name, value }) => (NAMES_IDS.has(name) ? value.split(' ').filter((id) => !ids.has(id)) : []))
  return [
    ...(whole || VOID.has(tagName) ? [] : [`opened or closed by the parser: ${shown}`]),
    ...strangers.map((child) => `<${child.tagName}> in <${tagName}>: ${shown}`),
    ...lost.map((id) => `no id ${id}: ${shown}`),
    ...(isNamed(element, labelled) ? [] : [`a control without a name: ${shown}`]),
    ...(tagName === 'svg' && at ? faultsOfXml(page.slice(at.startOffset, at.endOffset)).map((fault) => `${fault}: ${shown}`) : []),
  ]
}

/** Whether a control has a label, or is none. */
function isNamed(element: Element, labelled: ReadonlySet<string>): boolean {
  if (!['input', 'select', 'textarea'].includes(element.tagName) || attribute(element, 'type') === 'hidden') return true
  if (attribute(element, 'aria-label') ?? attribute(element, 'aria-labelledby')) return true
  for (let parent: Node | null = element.parentNode; parent; parent = 'parentNode' in parent ? parent.parentNode : null) if ('tagName' in parent && parent.tagName === 'label') return true
  return labelled.has(attribute(element, 'id') ?? '')
}
