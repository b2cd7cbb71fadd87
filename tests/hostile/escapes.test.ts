import assert from 'node:assert/strict'
import { DOMParser } from '@xmldom/xmldom'
import { parseFragment } from 'parse5'
import { test } from 'vitest'
import { parseDocument } from 'yaml'
import { forWorkflow, forWorkflowProperty } from '../../src/command/report-github.ts'
import { asJson } from '../../src/command/report-json.ts'
import { forXml } from '../../src/command/report-junit.ts'
import { uriOf } from '../../src/command/report-sarif.ts'
import { forTerminal } from '../../src/command/report-text.ts'
import { forComment } from '../../src/command/review-markdown.ts'
import { escaped } from '../../src/page/escaped.ts'
import { blockText } from '../../src/page/linked-data.ts'
import { forDiagram } from '../../src/read/flowchart.ts'
import { forStyle } from '../../src/site/assets.ts'
import { drawDiagram } from '../../src/site/draw-diagram.ts'
import { forYaml } from '../../src/site/seal.ts'

/** What each context must make of what could end it, command it, or hide in it. */
const TABLE: readonly { readonly context: string; readonly escape: (text: string) => string; readonly rows: readonly (readonly [given: string, becomes: string])[] }[] = [
  {
    context: 'an element or a quoted attribute, a feed, a site map',
    escape: escaped,
    rows: [
      ['</title><script>', '&lt;/title&gt;&lt;script&gt;'],
      ['"><x', '&quot;&gt;&lt;x'],
      ["' onload='x", '&#39; onload=&#39;x'],
      [']]>', ']]&gt;'],
      ['--><b>', '--&gt;&lt;b&gt;'],
      ['&lt;', '&amp;lt;'],
      ['a\u0000b\u001bc\u202ed\ufffee', 'abcde'],
    ],
  },
  {
    context: 'XML for test reports',
    escape: forXml,
    rows: [
      [']]><x a="1">', ']]&gt;&lt;x a=&quot;1&quot;&gt;'],
      ['a\nb\tc', 'a&#10;b&#9;c'],
      ['a\u0000b\ud800c\uffffd', 'abcd'],
      ['##[error]x', '##&#91;error]x'],
    ],
  },
  {
    context: 'a terminal',
    escape: forTerminal,
    rows: [
      ['a\u001b[2Jb', 'a\\u001b[2Jb'],
      ['a\nb\rc', 'a\\u000ab\\u000dc'],
      ['a\u009b31mb', 'a\\u009b31mb'],
      ['gpj.\u202eexe', 'gpj.\\u202eexe'],
      ['a\u2028b', 'a\\u2028b'],
      ['::error::x', '\\u003a:error::x'],
      ['  ::set-output::x', '  \\u003a:set-output::x'],
      ['a ##[add-mask]x', 'a ##\\u005badd-mask]x'],
      ['½ täglich → 5', '½ täglich → 5'],
    ],
  },
  { context: 'the message of a workflow command', escape: forWorkflow, rows: [['a\n::error::b', 'a%0A::error::b'], ['100%\r', '100%25%0D'], ['%0A', '%250A']] },
  { context: 'a property of a workflow command', escape: forWorkflowProperty, rows: [['a.md,line=9::x', 'a.md%2Cline=9%3A%3Ax'], ['a\nb%', 'a%0Ab%25']] },
  {
    context: 'a comment of a code host',
    escape: forComment,
    rows: [
      ['@everyone', '&#64;&#8203;everyone'],
      ['#1', '&#35;&#8203;1'],
      ['a | b', 'a &#124; b'],
      ['</details><!--', '&#60;/details&#62;&#60;&#33;--'],
      ['`x` **y** _z_ ~q~', '&#96;x&#96; &#42;&#42;y&#42;&#42; &#95;z&#95; &#126;q&#126;'],
      ['[a](https://x)', '&#91;a&#93;&#40;https&#58;//x&#41;'],
      ['a\n::error::b', 'a &#58;&#58;error&#58;&#58;b'],
      ['a\u202eb\u200bc', 'a b c'],
    ],
  },
  { context: 'JSON and SARIF', escape: asJson, rows: [['a"\\\n\u001b', '"a\\"\\\\\\n\\u001b"\n'], ['##[error]x', '"##\\u005berror]x"\n'], ['a\ud800', '"a\\ud800"\n']] },
  { context: 'a block of data in a page', escape: blockText, rows: [['</script><script>', '"\\u003c/script\\u003e\\u003cscript\\u003e"'], ['<!--', '"\\u003c!--"'], ['a\u2028&', '"a\\u2028\\u0026"']] },
  { context: 'an address in SARIF', escape: uriOf, rows: [['ladders/a b#c?.md', 'ladders/a%20b%23c%3F.md'], ['a\ud800.md', 'a%EF%BF%BD.md'], ['../x:y.md', '../x%3Ay.md'], ['100%.md', '100%25.md']] },
  { context: 'a label of a diagram', escape: forDiagram, rows: [['a"]; click b', '"a#quot;]; click b"'], ['#quot;', '"#35;quot;"'], ['%%{init', '"%%{init"']] },
  { context: 'a string of a stylesheet', escape: forStyle, rows: [['a"}</style>', '"a\\22 \\7d \\3c \\2f style\\3e "'], ['a\\', '"a\\5c "'], ['a\nb', '"a\\a b"'], ['Übung', '"\\dc bung"']] },
  { context: 'front matter', escape: forYaml, rows: [['A"\\', '"A\\"\\\\"'], ['a: b # c', '"a: b # c"'], ['a\nb', '"a\\nb"']] },
]

for (const { context, escape, rows } of TABLE) {
  for (const [given, becomes] of rows) test(`in ${context}, ${JSON.stringify(given)} becomes ${JSON.stringify(becomes)}`, () => assert.equal(escape(given), becomes))
}

/** Words that every context must give back as they were. */
const WORDS = ['</title><script>alert(1)</script>', '"><x', "' onload='x", ']]>', '--><script>', '&lt;', '`${x}`', '=HYPERLINK("x")', '@everyone | x', '::error::x', '%0A', '\\u003c', '{{x}}', 'Ünïcode ½ 日本 🤸']

test('what is escaped is read back as it was written: in an element, an attribute, XML, JSON and front matter', () => {
  for (const words of WORDS) {
    const [element] = parseFragment(`<p title="${escaped(words)}">${escaped(words)}</p>`).childNodes
    assert.ok(element && 'attrs' in element)
    assert.equal(element.attrs[0]?.value, words)
    assert.deepEqual(element.childNodes.map((child) => ('value' in child ? child.value : child.nodeName)), [words])
    const xml = new DOMParser().parseFromString(`<t a="${forXml(words)}">${escaped(words)}</t>`, 'text/xml').documentElement
    assert.deepEqual([xml?.getAttribute('a'), xml?.textContent], [words, words])
    assert.equal(JSON.parse(asJson(words)), words)
    assert.equal(parseDocument(`by: ${forYaml(words)}`).toJS().by, words)
  }
})

test('a label that is markup or a command of the drawing program is drawn as its words, and nothing else is drawn', async () => {
  for (const words of [...WORDS, 'a"] click r0 "javascript:x"', 'end', 'subgraph x', '%%{init: {}}%%', '<br/>', '**bold**', '#lt;b#gt;']) {
    const svg = await drawDiagram(`flowchart BT\n  r0[${forDiagram(words)}]\n`, 'drawn')
    const drawing = new DOMParser().parseFromString(svg, 'image/svg+xml')
    assert.equal(drawing.getElementsByTagName('script').length + drawing.getElementsByTagName('a').length + drawing.getElementsByTagName('foreignObject').length, 0)
    assert.equal((drawing.documentElement?.textContent ?? '').replaceAll(/\s/g, ''), words.replaceAll(/\s/g, ''))
  }
})
