import assert from 'node:assert/strict'
import fc from 'fast-check'
import { test } from 'vitest'
import { fencesIn, flowchartSource, readFlowchart } from '../../src/read/flowchart.ts'

const read = (source: string, title = 'A title') => readFlowchart({ title, source })

/** One line after the head, and what becomes of it. */
const lines = [
  { line: 'a', becomes: ['box0["a"]'] },
  { line: 'a["Start"]', becomes: ['box0["Start"]'] },
  { line: 'a( Start )', becomes: ['box0("Start")'] },
  { line: 'a{"Ready?"}', becomes: ['box0{"Ready?"}'] },
  { line: 'end --> class', becomes: ['box0["end"]', 'box1["class"]', 'box0 --> box1'] },
  { line: 'a-->b', becomes: ['box0["a"]', 'box1["b"]', 'box0 --> box1'] },
  { line: 'a("One") -->|"yes"| b["Two"] ---c', becomes: ['box0("One")', 'box1["Two"]', 'box2["c"]', 'box0 -->|"yes"| box1', 'box1 --- box2'] },
  { line: 'a -- yes --> b', becomes: ['box0["a"]', 'box1["b"]', 'box0 -->|"yes"| box1'] },
  { line: 'a -. "not yet" .-> b', becomes: ['box0["a"]', 'box1["b"]', 'box0 -.->|"not yet"| box1'] },
  { line: 'a == now ==> b', becomes: ['box0["a"]', 'box1["b"]', 'box0 ==>|"now"| box1'] },
  { line: 'a["Three<br/>reps"]', becomes: ['box0["Three\nreps"]'] },
  { line: 'a["3 # 4; &quot; `x`"]', becomes: ['box0["3 #35; 4; &quot; `x`"]'] },
  { line: 'a["<script>alert(1)</script>"]', becomes: ['box0["<script>alert(1)</script>"]'] },
]

for (const { line, becomes } of lines) {
  test(`${line} is written anew as ${becomes.join('; ')}`, () => {
    const { value, flaws } = read(`flowchart LR\n${line}`)
    assert.deepEqual(flaws, [])
    assert.deepEqual(value && flowchartSource(value).split(/\n {2}/), ['flowchart LR', ...becomes])
  })
}

const KNOWN = 'A line is a box such as a["Start"], a("Start") or a{"Ready?"}, or boxes joined by -->, -.-> or ==>, with words as in -->|"yes"|.'

/** What never reaches the drawing program. */
for (const line of [
  'click a "https://evil.example"',
  'click a call alert()',
  'a --> b; click a "javascript:alert(1)"',
  'style a fill:url(https://evil.example)',
  'classDef x fill:red',
  'class a x',
  'a:::x --> b',
  'linkStyle 0 stroke:red',
  'subgraph one',
  '%%{init: {"securityLevel": "loose"}}%%',
  '---',
  'a@{ img: "https://evil.example/x.png" }',
  'a["unclosed',
  'a["one" onload="x"]',
  'a>flag]',
  'a[(data)]',
  'a & b --> c',
  'a -- yes ==> b',
  'a --> ',
  '--> b',
  'accTitle:',
  'accDescr { two lines',
  '1a --> b',
  'a‮ --> b',
]) {
  test(`${line} is found, and not drawn`, () => {
    const { value, flaws } = read(`flowchart TB\na\n${line}`)
    assert.equal(value, undefined)
    assert.deepEqual(flaws, [{ line: 2, message: `"${line.trim()}" is not understood. ${KNOWN}` }])
  })
}

const ONLY = 'Only flowcharts are drawn. Begin with "flowchart TB", from top to bottom, or BT, LR or RL.'
const wholes = [
  { says: 'nothing', source: '', flaw: ONLY },
  { says: 'another kind', source: 'pie\n"a": 3', flaw: ONLY },
  { says: 'front matter', source: '---\nconfig: {}\n---\nflowchart TB\na', flaw: ONLY },
  { says: 'a directive first', source: '%%{init: {}}%%\nflowchart TB\na', flaw: ONLY },
  { says: 'a head with more on its line', source: 'flowchart TB; a', flaw: ONLY },
  { says: 'no box', source: 'flowchart TB\n', flaw: `The diagram is empty. ${KNOWN}` },
  { says: 'no title', source: 'flowchart TB\na', title: '', flaw: 'The diagram has no title. Write it behind ```mermaid, or on a line "accTitle: ..."; who cannot see it hears the title first.' },
  { says: 'too many boxes', source: `flowchart TB\n${Array.from({ length: 41 }, (_, nth) => `a${nth}`).join('\n')}`, flaw: 'The diagram has more than 40 boxes or 80 arrows. Draw less, or two of them.' },
  { says: 'too many arrows', source: `flowchart TB\na${' --> a'.repeat(81)}`, flaw: 'The diagram has more than 40 boxes or 80 arrows. Draw less, or two of them.' },
  { says: 'too long a label', source: `flowchart TB\na["${'long '.repeat(30)}"]`, flaw: '"long long long long long long long long ..." is long for a diagram. Say it in at most 120 signs.' },
  { says: 'too much of everything', source: `flowchart TB\n${'a-->b\n'.repeat(700)}`, flaw: 'The diagram is longer than 4000 signs. Draw less, or two of them.' },
]

for (const { says, source, title, flaw } of wholes) test(`a flowchart with ${says} is one finding`, () => assert.deepEqual(read(source, title).flaws, [{ line: 0, message: flaw }]))

test('whatever stands in a fence, what is written anew holds only our own ids and quoted labels', () => {
  const piece = fc.constantFrom('a', 'b["x"]', 'c("y")', 'd{"z"}', ' --> ', '-->|"yes"|', ' -- no --> ', '\n', '"', '%%', ';', 'click', ' ', '[', ']', '#quot;', 'end', '<br>', '{', '}')
  fc.assert(
    fc.property(fc.array(piece, { maxLength: 30 }), (pieces) => {
      const { value, flaws } = read(`flowchart TB\n${pieces.join('')}`)
      assert.ok(value ? flaws.length === 0 : flaws.length > 0)
      for (const line of value ? flowchartSource(value).replace(/"[^"]*"/g, '""').split('\n').slice(1) : []) assert.match(line, /^ {2}box\d+(\[""\]|\(""\)|\{""\}| (-->|---|-\.->|-\.-|==>|===)(\|""\|)? box\d+)$/)
    }),
  )
})

test('only fences that say mermaid are flowcharts, with the rest of what they say for a title', () => {
  assert.deepEqual(fencesIn('```mermaid  How to go on \na\n```\n\n```js\nmermaid\n```\n\n- ~~~mermaid\n  b\n  ~~~\n\n```mermaidx\n```\n\n`mermaid`\n'), [
    { title: 'How to go on', source: 'a\n', line: 0 },
    { title: '', source: 'b\n', line: 8 },
  ])
})

test('lines made to be tried again and again are read at once', () => {
  const began = process.cpuUsage()
  for (const line of [`a -- ${'-'.repeat(3900)}`, `a -- ${'x '.repeat(1900)}`, `a -->|${' '.repeat(3900)}`, `a[${' '.repeat(3900)}`, `a["x"${' '.repeat(3900)}`, `a${' '.repeat(3900)}-`]) assert.ok(read(`flowchart TB\n${line}`).flaws.length > 0)
  assert.ok(process.cpuUsage(began).user < 1e6)
})
