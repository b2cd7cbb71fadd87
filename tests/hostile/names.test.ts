import { held, heldAtOnce, heldTogether } from './held.ts'
import { HANDBOOK, LADDER, LADDER_FILE, ladder } from './place.ts'

/** Ids that would lead somewhere as an address or a file. */
heldTogether('ids that lead out', [
  ...(
    [
      ['"../../x"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"%2e%2e%2f"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"%252e%252e%252f"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"..\\\\..\\\\x"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['/etc/passwd', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"//host"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"C:x"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"file:x"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"a\\0b"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"a\\nb"', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['a.', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['"a "', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['con', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['aux', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['lpt9', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['con.md', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['index', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['"404"', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['service-worker', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['assets', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['data', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['pagefind', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['editions', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['my-ladders', '2:1  id is a name the handbook keeps for itself; choose another.  (values-fit)'],
      ['press--up', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['-press', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['Press', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['ａｂｃ', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['é', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['constructor'],
      ['.git', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
      ['_headers', '2:1  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'],
    ] as const
  ).map(([value, ...finds]) => ({ says: `${value} as an id`, body: ladder(['id: hollow-hold', `id: ${value}`]), finds })),
  { says: 'an id of 300 letters', body: ladder(['id: hollow-hold', `id: ${'a'.repeat(300)}`]), finds: ['2:1  id must have at most 60 characters.  (values-fit)'] },
  { says: 'a rung named as a way up', body: ladder(['id: tucked', 'id: ../tucked']), finds: ['10:5  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'] },
  { says: 'two rungs of one id', body: ladder(['- id: hollow\n', '- id: tucked\n']), finds: ['5:1  The aim is "hollow", but no rung has that id. The rungs are: tucked, tucked.  (aim-exists)', '13:5  "Hollow hold" has the id "tucked", which "Tucked hold" has already. Give it another.  (ids-are-unique)', `43:1  "Hollow hold" belongs to no rung. Give it the title of a rung, or add the rung's id: {#tucked}.  (sections-match-rungs)`] },
  { says: 'two rungs that differ in case', body: ladder(['- id: hollow\n', '- id: Tucked\n']), finds: ['13:5  id must be small letters, digits and single hyphens, starting with a letter, such as bench-hands.  (values-fit)'] },
  { says: 'a section for a rung that is not there', body: ladder(['{#tucked}', '{#nowhere}']), finds: ['10:5  "Tucked hold" is not described. Write a section "## Tucked hold {#tucked}" with Set up, Full rep, Cues and Faults.  (every-rung-is-described)', `22:1  "Tucked hold" belongs to no rung. Give it the title of a rung, or add the rung's id: {#tucked}.  (sections-match-rungs)`] },
])

/** Files whose names become addresses, and files that would share one. */
const page = '---\ntitle: A page\nsummary: A page.\n---\n\nWords.\n'
heldAtOnce('names of files', [
  { says: 'two ladders of one id', files: { 'ladders/b.md': LADDER }, finds: ['ladders/b.md:2:1  The ladder "hollow-hold" is already there, in ladders/a.md:2. Give this one another id, or write amends: hollow-hold to change that one.  (ids-are-unique)'] },
  { says: 'a page and a ladder of one name', files: { 'content/hollow-hold.md': page }, finds: [`content/hollow-hold.md:2:1  The page "hollow-hold" and the ladder "hollow-hold" would share one address. Rename the page's file.  (ids-are-unique)`] },
  { says: 'two pages that meet in one address', files: { 'content/a-b.md': page, 'content/a/b.md': page }, finds: ['content/a/b.md:2:1  The page "a-b" is already there, in content/a-b.md. Rename one of the two files.  (ids-are-unique)'] },
  { says: 'pages named as a device, an own address, and with capitals', files: { 'content/aux.md': page, 'content/search.md': page, 'content/Safety.md': page }, finds: ['content/Safety.md:1:1  The file is named "Safety", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)', 'content/aux.md:1:1  The file is named "aux", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)', 'content/search.md:1:1  The file is named "search", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)'] },
  { says: 'a page with an accent written in two ways', files: { 'content/caf\u00e9.md': page, 'content/cafe\u0301.md': page }, finds: ['content/café.md:1:1  The file is named "café", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)', 'content/café.md:1:1  The file is named "café", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)'] },
  { says: 'a page whose name begins with a hyphen', files: { 'content/-rf.md': page }, finds: ['content/-rf.md:1:1  The file is named "-rf", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)'] },
  { says: 'a page whose name ends in a dot', files: { 'content/a..md': page }, finds: ['content/a..md:1:1  The file is named "a.", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)'] },
  { says: 'a page whose name holds a newline and a command', files: { 'content/a\n::error::b.md': page }, finds: ['content/a\\u000a::error::b.md:1:1  The file is named "a\\u000a::error::b", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)'] },
  { says: 'a ladder whose name moves the cursor', files: { 'ladders/\u001b[2Jx.md': 'x' }, finds: ['ladders/\\u001b[2Jx.md:1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'] },
  { says: 'a ladder whose name is turned round', files: { 'ladders/\u202egpj.md': 'x' }, finds: ['ladders/\\u202egpj.md:1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'] },
  { says: 'a ladder whose name is markup', files: { 'ladders/<img src=x onerror=alert(1)>.md': 'x' }, finds: ['ladders/<img src=x onerror=alert(1)>.md:1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'] },
  { says: 'a name of 255 bytes', files: { [`content/${'n'.repeat(252)}.md`]: page }, finds: ['content/nnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnn.md:1:1  The file is named "nnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnnn", which cannot be an address. Use small letters, digits and single hyphens, such as safety.md.  (file-names-are-addresses)'] },
  { says: 'sixty folders in one another', files: { [`ladders/${'d/'.repeat(60)}x.md`]: 'x' }, finds: ['ladders/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/d/x.md:1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'] },
])

/** Handbooks that reach out of their folder. */
held([
  { says: 'no handbook', files: { 'handbook.yaml': undefined }, finds: ['handbook.yaml:1:1  There is no handbook.yaml here. Write one with title, organisation, edition and contact.  (handbook-is-there)'] },
  { says: 'a handbook that extends a folder that is no workspace', files: { 'handbook.yaml': `${HANDBOOK}extends: ..\n` }, finds: ['handbook.yaml:1:1  What this handbook extends is no workspace: there is no handbook.yaml that can be read in "..". Mend extends.  (handbook-is-there)'] },
  { says: 'a handbook that extends itself', files: { 'handbook.yaml': `${HANDBOOK}extends: .\n` }, finds: ['handbook.yaml:1:1  This handbook extends, by way of others, itself. Take out one extends.  (layers-end)'] },
  { says: 'a handbook that extends a package by a way up', files: { 'handbook.yaml': `${HANDBOOK}extends: a/../../..\n` }, finds: ['handbook.yaml:1:1  What this handbook extends is no workspace: there is no handbook.yaml that can be read in "../..". Mend extends.  (handbook-is-there)'] },
  { says: 'a handbook that extends an address', files: { 'handbook.yaml': `${HANDBOOK}extends: https://host.example/x\n` }, finds: ['handbook.yaml:1:1  What this handbook extends is not there: no folder "https:/host.example/x". Mend extends.  (handbook-is-there)'] },
  { says: 'a handbook that extends a name with an escape', files: { 'handbook.yaml': `${HANDBOOK}extends: "x\\e[31m"\n` }, finds: ['handbook.yaml:5:1  extends holds a hidden or direction-changing character; type it again by hand.  (values-fit)'] },
  { says: 'an edition named as a way up', files: { 'handbook.yaml': HANDBOOK.replace('"1"', '"../../1"') }, finds: ['handbook.yaml:3:1  edition must be letters, digits, dots and hyphens, such as "2026.2".  (values-fit)'] },
  { says: 'an edition kept under a name of dots', files: { 'handbook.yaml': `${HANDBOOK}editions: [{ edition: "..", on: 2026-01-01, keep: true }]\n` }, finds: ['handbook.yaml:5:14  edition must be letters, digits, dots and hyphens, such as "2026.2".  (values-fit)'] },
  { says: 'an edition read from a revision that is an option', files: { 'handbook.yaml': `${HANDBOOK}editions: [{ edition: "0", on: 2026-01-01, revision: "--output=/tmp/x" }]\n`, [LADDER_FILE]: 'x' }, finds: ['ladders/a.md:1:1  The file has no front matter. Begin it with a line of three hyphens, ---, then keys such as title, then --- again.  (front-matter-is-there)'] },
  { says: 'a published address that is not https', files: { 'handbook.yaml': `${HANDBOOK}address: "javascript:alert(1)"\n` }, finds: ['handbook.yaml:5:1  address must be the https address at which the handbook is published, such as https://handbook.example, at most 200 characters.  (values-fit)'] },
  { says: 'a colour that closes the stylesheet', files: { 'handbook.yaml': `${HANDBOOK}colours: { accent: "red;}</style><script>" }\n` }, finds: ['handbook.yaml:5:12  accent must be a colour such as "#0b5563".  (values-fit)'] },
  { says: 'a language that is markup', files: { 'handbook.yaml': `${HANDBOOK}languages: ['en"><x']\n` }, finds: ['handbook.yaml:5:13  Each language must be a code such as en or pt-BR.  (values-fit)'] },
  { says: 'an amendment to what is not there', files: { 'ladders/b.md': '---\namends: nowhere\nbecause: a test\n---\n' }, finds: ['ladders/b.md:2:1  There is no ladder "nowhere" to amend. Name a ladder of the curriculum that is extended.  (amendments-fit)'] },
])
