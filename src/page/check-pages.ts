import { rules } from '../check/index.ts'
import type { Rule } from '../check/rule.ts'
import { linkTo } from './address.ts'
import { html, type Html } from './html.ts'
import type { SitePage } from './site-page.ts'

/** A rule's two ladders as their author wrote them: one on which nothing is found, and one that marks its own line. */
export type Examples = ReadonlyMap<string, { readonly good: string; readonly bad: string }>

const ALL = '/checks/'
const addressOf = (rule: Rule): string => `${ALL}${rule.name}/`

/** Every rule the curriculum is held to. */
export function checksPage(): SitePage {
  return {
    address: ALL,
    title: 'What is checked',
    description: 'The rules every ladder and page of this handbook is held to before it is published.',
    found: { kind: 'page' },
    body: html`<h1>What is checked</h1>
<p class="lead">Nothing is published before every rule holds. Each rule leads to a ladder that keeps it and one that does not.</p>
<dl class="checks">${rules.map((rule) => html`
<dt><a href="${linkTo(ALL, addressOf(rule))}"><code>${rule.name}</code></a></dt> <dd>${rule.says}</dd>`)}
</dl>`,
  }
}

/** The mark by which a bad ladder points at its own line. */
const MARK = /\s*(?:# finds: [a-z-]+|<!-- finds: [a-z-]+ -->)\s*$/

/** A ladder as written, the marked lines set apart, the marks themselves taken out. */
function listing(text: string): Html {
  return html`<pre tabindex="0"><code>${text.trimEnd().split('\n').map((line) => (MARK.test(line) ? html`<mark>${line.replace(MARK, '')}</mark>\n` : `${line}\n`))}</code></pre>`
}

/** One rule: what must hold, why, and its two ladders. */
export function checkPage(rule: Rule, examples: Examples): SitePage {
  const address = addressOf(rule)
  const example = examples.get(rule.name)
  return {
    address,
    title: rule.name,
    description: rule.says,
    body: html`<p class="trail"><a href="${linkTo(address, ALL)}">What is checked</a></p>
<h1><code>${rule.name}</code></h1>
<p class="lead">${rule.says}</p>
<p>${rule.why}</p>
${example && html`<section><h2 id="not-so">A ladder that does not keep it</h2><p>The marked lines are what a coach should look at.</p>${listing(example.bad)}</section>
<section><h2 id="so">A ladder that keeps it</h2>${listing(example.good)}</section>`}`,
  }
}

/** The page of all rules, and one of each. */
export const checkPages = (examples: Examples): SitePage[] => [checksPage(), ...rules.map((rule) => checkPage(rule, examples))]
