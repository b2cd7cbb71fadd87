import assert from 'node:assert/strict'
import { test } from 'vitest'
import { measure } from '../../src/measure/measure.ts'
import { readCurriculum } from '../../src/read/read-curriculum.ts'
import { raw } from '../../src/page/html.ts'
import { diagramName, ladderDiagram } from '../../src/page/ladder-diagram.ts'
import { speechesOf } from '../../src/page/speech.ts'
import { ENGLISH } from '../../src/page/tongue.ts'
import { drawDiagram } from '../../src/site/draw-diagram.ts'
import { drawFences } from '../../src/site/draw-fences.ts'
import { readEditions } from '../../src/site/editions.ts'
import { fileOf } from '../../src/site/plugin.ts'
import { ruleExamples } from '../../src/site/rule-examples.ts'
import { headingOf, strangersIn } from './allowed.ts'
import { heldTogether } from './held.ts'
import { everyPage } from '../page/every-page.ts'
import { ladder, lines } from './place.ts'

/** A ladder with these words before its first rung. */
const intro = (words: string): string => ladder(['A still shape', `${words}\n\nA still shape`])

const nowhere = (href: string): string => `20:1  The link "${href}" leads nowhere the handbook may go: links lead to rung:ladder/rung, to a page such as /safety/, or out by https, mailto or tel.  (links-resolve)`

/** Links that lead where no handbook leads, in every way Markdown writes a link. Where nothing is found, the parser took it for words. */
const LINKS: readonly (readonly [link: string, ...finds: string[]])[] = [
  ['[a](javascript:alert(1))'],
  ['[a](JaVaScRiPt:alert(1))'],
  ['[a](<java\tscript:alert(1)>)', nowhere('java%09script:alert(1)')],
  ['[a](&#106;avascript:alert(1))'],
  ['[a](java&#10;script:alert(1))', nowhere('java%0Ascript:alert(1)')],
  ['[a](&#x6A&#x61;vascript&colon;alert(1))', nowhere('&#x6Aavascript:alert(1)')],
  ['[a](%6Aavascript:alert(1))', nowhere('%6Aavascript:alert(1)')],
  ['[a](vbscript:x)'],
  ['[a](data:text/html,<script>alert(1)</script>)'],
  ['[a](data:image/svg+xml;base64,PHN2Zz4=)'],
  ['[a](data:image/png;base64,AAAA)', nowhere('data:image/png;base64,AAAA')],
  ['[a](blob:https://evil.example/x)', nowhere('blob:https://evil.example/x')],
  ['[a](//evil.example/x)', nowhere('//evil.example/x')],
  ['[a](\\\\\\\\evil.example)', nowhere('%5C%5Cevil.example')],
  ['[a](/\\evil.example)', nowhere('/%5Cevil.example')],
  ['[a](http://evil.example)', nowhere('http://evil.example')],
  ['[a](https:evil.example)', nowhere('https:evil.example')],
  ['[a](ftp://evil.example)', nowhere('ftp://evil.example')],
  ['[a](file:///etc/passwd)'],
  ['[a](filesystem:https://evil.example)', nowhere('filesystem:https://evil.example')],
  ['[a](ms-word:x)', nowhere('ms-word:x')],
  ['[a](rung:../../x)', nowhere('rung:../../x')],
  ['[a](rung:constructor/__proto__)', nowhere('rung:constructor/__proto__')],
  ['[a](/../../etc/)', nowhere('/../../etc/')],
  ['[a](/%2e%2e/)', nowhere('/%2e%2e/')],
  ['[a](/nowhere/)', '20:1  The link "/nowhere/" leads to no page. Mend it or take it out.  (links-resolve)'],
  ['[a](?raw)', nowhere('?raw')],
  ['<javascript:alert(1)>'],
  ['<data:text/html,x>'],
  ['[a][x]\n\n[x]: javascript:alert(1)'],
  ['[a][x]\n\n[x]: //evil.example', nowhere('//evil.example')],
]
heldTogether(
  'links that lead where no handbook leads',
  LINKS.map(([link, ...finds]) => ({ says: link.replaceAll('\n', ' '), body: intro(link), finds })),
)

/** Markup, and words that would close what they stand in. */
const MARKUP = [
  '<script>alert(1)</script>',
  '<ScRiPt src=//evil.example/x.js></sCrIpT>',
  '<img src=x onerror=alert(1)>',
  '<svg onload=alert(1)><script>1</script></svg>',
  '<svg><foreignObject><body onload=alert(1)></foreignObject></svg>',
  '<iframe srcdoc="<script>alert(1)</script>"></iframe>',
  '<base href=https://evil.example/>',
  '<meta http-equiv=refresh content="0;url=https://evil.example">',
  '<form action=https://evil.example><input name=q></form>',
  '<style>@import "https://evil.example/x.css"</style>',
  '<link rel=stylesheet href=https://evil.example/x.css>',
  '<object data=x></object><embed src=x>',
  '<math><mtext></mtext><mglyph><style><!--</style><img title="--&gt;&lt;img src=1 onerror=alert(1)&gt;">',
  '<a href="javascript:alert(1)" onclick=alert(1)>x</a>',
  '<noscript><p title="</noscript><img src=x onerror=alert(1)>">',
  '<textarea></textarea><template><script>1</script></template>',
  '</title><script>alert(1)</script>',
  ']]>', '--><script>alert(1)</script>', '</script><script>alert(1)</script>', '"><x', "'><x", '` onmouseover=alert(1) `', '&lt;script&gt;alert(1)&lt;/script&gt;', '{{constructor.constructor("alert(1)")()}}', '${alert(1)}', '<%= 1 %>', '{% raw %}',
  '@everyone | `x` </details>', '=HYPERLINK("https://evil.example")', '::error::x', '##[error]x',
] as const

/** Fences and headings that reach for more than words. */
const BODY = [
  ...MARKUP,
  '```"><script>alert(1)</script>\nx\n```',
  '```js" onmouseover="alert(1)\nx\n```',
  '```mermaid\nflowchart TB\nclick a "javascript:alert(1)"\na["<img src=x onerror=alert(1)>"]\n```',
  '```mermaid Drawn\nflowchart TB\na["<img src=x onerror=alert(1)> </script> #quot;"] --> b["&lt;script&gt;"]\n```',
  '```mermaid\n%%{init: {"securityLevel": "loose"}}%%\nflowchart TB\na --> b\n```',
  `\`\`\`mermaid Many\nflowchart TB\n${lines(2000, (index) => `n${index} --> n${index + 1}`)}\n\`\`\``,
  '#### constructor', '#### body', '#### attributes', '#### __proto__', '#### Twice', '#### Twice', '#### {#page}', '#### x {#q}', '#### "><script>alert(1)</script>',
  '[a]: <"onmouseover=alert(1)>\n[a]', '[x](https://a.example "title\\" onmouseover=\\"alert(1)")', '![" onerror="alert(1)](x.png)', '<https://a.example/"onmouseover=alert(1)>', '[^a]\n\n[^a]: <script>alert(1)</script>', '[^"><x]\n\n[^"><x]: y',
]

const text = (body: string): Uint8Array => new TextEncoder().encode(body)
const yaml = (words: string): string => JSON.stringify(words)

/** A handbook in which every place that a coach writes in holds something hostile, another in each, beginning with the nth. */
function hostileHandbook(nth: number) {
  let next = nth
  const words = (): string => (MARKUP[next++ % MARKUP.length] ?? '').slice(0, 80).trim()
  const own = `title: ${yaml(words())}\norganisation: ${yaml(words())}\nedition: "1"\ncontact: ${yaml(words())}\naddress: https://handbook.example\neditions: [{ edition: "0", on: 2026-01-01, revision: "--help" }]\n`
  const [ladderTitle, rungTitle, pageTitle] = [words(), words(), words()]
  const one = ladder(
    ['title: Hollow hold', `title: ${yaml(ladderTitle)}`], ['movement: trunk', `movement: ${yaml(words().slice(0, 60))}`], ['equipment: [mat]', `equipment: [${yaml(words())}]`], ['low back stays on the mat', yaml(words())], ['pain in the back', yaml(words())], ['a back injured in the last year', yaml(words())],
    ['title: Tucked hold', `title: ${yaml(rungTitle)}\n    demand: [balance]\n    cautions: [${yaml(words())}]`], ['## Tucked hold {#tucked}', `## ${rungTitle} {#tucked}`], ['Back glued to the mat.', words()], ['Mat on a level floor', words()], ['Chin pushes forward', words().replaceAll('|', '\\|')], ['Start: low back', words()],
    ['A still shape that', `${BODY.join('\n\n')}\n\nA still shape that`], ['Arms and legs long, nothing else changes.', BODY.join('\n\n')],
  )
  const page = `---\ntitle: ${yaml(pageTitle)}\nsummary: ${yaml(words())}\n---\n\n${BODY.join('\n\n')}\n`
  const files = { 'handbook.yaml': own, 'ladders/a.md': one, 'content/page.md': page }
  return { reading: readCurriculum([{ files: Object.entries(files).map(([file, body]) => ({ file, bytes: text(body) })) }]), shown: { 'hollow-hold/index.html': ladderTitle, 'hollow-hold/tucked/index.html': rungTitle, 'page/index.html': pageTitle } }
}

for (let nth = 0; nth < MARKUP.length; nth += 4) {
  test(`markup in every place of a handbook is shown as it is written, and no page holds a stranger (from "${MARKUP[nth]}")`, async () => {
    const { reading, shown } = hostileHandbook(nth)
    assert.ok(reading.value)
    assert.equal(reading.value.ladders.length, 1, JSON.stringify(reading.findings, null, 1))
    const curriculum = measure(reading.value)
    const { changes } = await readEditions('/nowhere', curriculum)
    const diagrams = new Map(await Promise.all(curriculum.ladders.map(async (each) => [each.id, raw(await drawDiagram(ladderDiagram(each, ENGLISH), diagramName(each)))] as const)))
    const [speech] = speechesOf(curriculum)
    assert.ok(speech)
    const made = everyPage(speech, { diagrams, drawn: await drawFences(curriculum, drawDiagram), examples: await ruleExamples(), editions: changes })
    const pages = made.map(({ address, html }) => ({ name: fileOf(address), bytes: html }))
    assert.ok(pages.length > 20)
    for (const { name, bytes } of pages) assert.deepEqual([name, strangersIn(String(bytes))], [name, []])
    for (const [name, title] of Object.entries(shown)) assert.equal(headingOf(String(pages.find((page) => page.name === name)?.bytes)), title)
  })
}
