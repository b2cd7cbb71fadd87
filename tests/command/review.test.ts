import assert from 'node:assert/strict'
import { chmodSync, existsSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { test } from 'vitest'
import { reviewSchema } from '../../src/command/review-json.ts'
import { COMMENT_MARK, forComment } from '../../src/command/review-markdown.ts'
import { run } from '../site/demo.ts'
import { commit, folderNamed, git, program, repository, write } from './repository.ts'
import { sarifResults } from './sarif.ts'
import { CONFLICT, HANDBOOK, ladder } from './small.ts'

const FILES = { 'handbook.yaml': HANDBOOK, 'ladders/bench-press.md': ladder() }

/** What a review in JSON came to. */
async function reviewed(folder: string, ...words: string[]) {
  const { code, out, note } = await run(folder, 'review', ...words, '--format', 'json')
  assert.deepEqual([code, note], [0, ''])
  return reviewSchema.parse(JSON.parse(out))
}

/** The kinds of changes that were typed. */
const kinds = async (folder: string, ...words: string[]): Promise<string[]> => (await reviewed(folder, ...words)).typed.map(({ kind }) => kind)

// — the four formats —

const changed = repository('formats', FILES)
write(changed, { 'ladders/bench-press.md': ladder({ weights: [20, 26], stop: 'pain in the chest' }) })

test('in words: what was typed, numbered, and what follows with the numbers it follows from', async () => {
  const { code, out, note } = await run(changed, 'review', 'HEAD')
  assert.deepEqual([code, note], [0, ''])
  assert.equal(
    out,
    `The next edition: re-placing
    7  re-placing: an athlete placed correctly before may now be placed wrongly or unsafely
    1  growth: there is more to choose from, nobody is placed otherwise
  !    could hurt somebody: look at it first

Typed
  1  ! bench-press  safety note removed: stop, was: pain in a shoulder
         ladders/bench-press.md:13 → ladders/bench-press.md:13
  2    bench-press/kg-2  set-up raised: load_kg, 22 kg → 26 kg, +4
         ladders/bench-press.md:12 → ladders/bench-press.md:12
  3    bench-press  safety note added: stop, pain in the chest
         ladders/bench-press.md:13

Follows
     ! bench-press/kg-2  step steepens: step from kg-1, comfortable → too steep
         ladders/bench-press.md:12 → ladders/bench-press.md:12   follows from 2
       bench-press/kg-2  load rises: 22.0 kg (22.0 kg) → 26.0 kg (26.0 kg), +4
         ladders/bench-press.md:12 → ladders/bench-press.md:12   follows from 2
       bench-press/kg-2  fewer first reps to expect: first reps from kg-1, 3 to 7 reps → 0 to 1 reps, −3
         ladders/bench-press.md:12 → ladders/bench-press.md:12   follows from 2
       bench-press/kg-2  more time on the rung: time on the rung from kg-1, 3 to 5 weeks → 6 weeks, +1
         ladders/bench-press.md:12 → ladders/bench-press.md:12   follows from 2
       bench-press/kg-1  placed lower: after 10 strict reps with 0 in reserve, kg-2 → kg-1
         ladders/bench-press.md:11   follows from 2
         an athlete of average build with 10 strict reps on kg-1 and 0 in reserve: was ready for kg-2, is ready for kg-1
`,
  )
})

test('as JSON: what the schema of the review holds, and nothing else', async () => {
  const { version, edition, notes, typed, followed } = await reviewed(changed, 'HEAD')
  assert.deepEqual([version, edition, notes], [1, 're-placing', []])
  assert.deepEqual(typed.map(({ kind, subject }) => [kind, subject]), [
    ['note-removed', { ladder: 'bench-press' }],
    ['set-up-raised', { ladder: 'bench-press', rung: 'kg-2' }],
    ['note-added', { ladder: 'bench-press' }],
  ])
  assert.deepEqual(followed.map(({ kind }) => kind), ['step-steepens', 'load-rises', 'first-reps-fall', 'block-lengthens', 'placement-falls'])
  assert.deepEqual(new Set(followed.flatMap(({ causes }) => causes)), new Set([typed[1]?.fingerprint]))
})

test('as SARIF 2.1.0: each change beside its line, what could hurt somebody as an error', async () => {
  const { code, out } = await run(changed, 'review', 'HEAD', '--format', 'sarif')
  assert.equal(code, 0)
  const results = sarifResults(out)
  assert.deepEqual(results.map(({ ruleId, level }) => `${ruleId} ${level}`), [
    'note-removed error',
    'set-up-raised warning',
    'note-added note',
    'step-steepens error',
    'load-rises warning',
    'first-reps-fall warning',
    'block-lengthens warning',
    'placement-falls warning',
  ])
  assert.equal(results[1]?.message.text, 'bench-press/kg-2: set-up raised: load_kg, 22 kg → 26 kg, +4')
  assert.deepEqual(results[1]?.locations[0]?.physicalLocation.region, { startLine: 12, startColumn: 60 }) // the letter load_kg begins at
})

test('as Markdown: the weight on top, what could hurt somebody next, the tables and the ladder folded', async () => {
  const { out } = await run(changed, 'review', 'HEAD', '--format', 'markdown')
  assert.ok(out.startsWith(`${COMMENT_MARK}\n**The next edition: re-placing**\n`))
  assert.match(out, /\*\*Look at these first\*\*\n\n- bench-press: safety note removed&#58; stop, was&#58; pain in a shoulder\n/)
  assert.match(out, /<summary>Typed: 3<\/summary>/)
  assert.match(out, /<summary>What follows: 5<\/summary>/)
  assert.match(out, /```mermaid\nflowchart BT\n/)
  assert.match(out, /\n {2}class r1 changed\n {2}class r0 changed\n|\n {2}class r0 changed\n {2}class r1 changed\n/)
  assert.equal(out.match(/<details>/g)?.length, out.match(/<\/details>/g)?.length)
})

test('the same review is the same bytes twice, in every format', async () => {
  for (const format of ['text', 'markdown', 'json', 'sarif']) {
    const [one, other] = [await run(changed, 'review', 'HEAD', '--format', format), await run(changed, 'review', 'HEAD', '--format', format)]
    assert.equal(one.out, other.out)
    assert.ok(one.out.length > 0)
  }
})

test('nothing changed says nothing, and is fine', async () => {
  const folder = repository('unchanged', FILES)
  for (const format of ['text', 'markdown']) assert.deepEqual(await run(folder, 'review', 'HEAD', '--format', format), { code: 0, out: '', note: '' })
  assert.deepEqual(await reviewed(folder, 'HEAD'), { version: 1, edition: 'no change', notes: [], typed: [], followed: [] })
  assert.deepEqual(sarifResults((await run(folder, 'review', 'HEAD', '--format', 'sarif')).out), [])
})

test('the real program reviews, writes results to its output, and ends with 0', () => {
  const { code, out, note } = program(changed, ['review', 'HEAD'], { GIT_DIR: '/nowhere', GIT_INDEX_FILE: '/nowhere' }) // as in a hook
  assert.deepEqual([code, note], [0, ''])
  assert.match(out, /^The next edition: re-placing\n/)
})

// — branches, merges, names —

test('two revisions are compared with one another, and the working tree is left out of it', async () => {
  const folder = repository('branches', FILES)
  git(folder, 'checkout', '--quiet', '-b', 'heavier')
  write(folder, { 'ladders/bench-press.md': ladder({ weights: [20, 24] }) })
  commit(folder, 'heavier')
  git(folder, 'checkout', '--quiet', 'main')
  write(folder, { 'ladders/squat.md': ladder({ id: 'squat', title: 'Squat' }) })
  commit(folder, 'another ladder')
  assert.deepEqual(await kinds(folder, 'main', 'heavier'), ['ladder-withdrawn', 'set-up-raised'])
  git(folder, 'merge', '--quiet', '--no-edit', 'heavier')
  write(folder, { 'ladders/squat.md': ladder({ id: 'squat', title: 'Squats' }) })
  assert.deepEqual(await kinds(folder, 'HEAD^1', 'HEAD'), ['set-up-raised'])
  assert.deepEqual(await kinds(folder, 'HEAD^2', 'HEAD'), ['ladder-added'])
  assert.deepEqual(await kinds(folder, 'HEAD'), ['wording-changed'])
})

test('on a detached head a branch is compared as anywhere else', async () => {
  const folder = repository('detached', FILES)
  write(folder, { 'ladders/bench-press.md': ladder({ title: 'Press on a bench' }) })
  commit(folder, 'second')
  git(folder, 'checkout', '--quiet', '--detach', 'HEAD~1')
  assert.deepEqual(await kinds(folder, 'main'), ['wording-changed'])
  assert.deepEqual(await kinds(folder, 'HEAD'), [])
})

test('a file that was renamed is no change', async () => {
  const folder = repository('renamed', FILES)
  git(folder, 'mv', 'ladders/bench-press.md', 'ladders/press.md')
  assert.deepEqual(await kinds(folder, 'HEAD'), [])
  commit(folder, 'renamed')
  assert.deepEqual(await kinds(folder, 'HEAD~1', 'HEAD'), [])
})

test('a ladder that was deleted is withdrawn, a page too', async () => {
  const folder = repository('deleted', { ...FILES, 'ladders/squat.md': ladder({ id: 'squat', title: 'Squat' }), 'content/hall.md': '---\ntitle: The hall\nsummary: Where we meet.\n---\n\nHere.\n' })
  rmSync(path.join(folder, 'ladders/squat.md'))
  rmSync(path.join(folder, 'content/hall.md'))
  assert.deepEqual(await kinds(folder, 'HEAD'), ['page-withdrawn', 'ladder-withdrawn'])
})

test('a file whose name begins with a hyphen, holds spaces or letters of another script is read like any other', async () => {
  const names = ['-rf.md', '--output=x.md', 'two words.md', 'ö→.md', ':(glob)x.md', 'a"b.md']
  const folder = repository('names', { ...FILES, ...Object.fromEntries(names.map((name, index) => [`ladders/${name}`, ladder({ id: `odd-${index}`, title: `Odd ${index}` })])) })
  assert.deepEqual(await kinds(folder, 'HEAD'), [])
  for (const [index, name] of names.entries()) write(folder, { [`ladders/${name}`]: ladder({ id: `odd-${index}`, title: `Odd, ${index}` }) })
  assert.deepEqual(await kinds(folder, 'HEAD'), names.map(() => 'wording-changed'))
})

test('what is hidden, or lies in a folder that is named like a file, is read neither from disk nor from a commit', async () => {
  const hidden = { 'ladders/.draft.md': ladder({ id: 'draft' }), 'ladders/.old/x.md': ladder({ id: 'old' }), 'content/.x.md': 'x' }
  const folder = repository('hidden', { ...FILES, ...hidden })
  assert.deepEqual(await kinds(folder, 'HEAD'), [])
})

test('a workspace below the top of its repository is reviewed alone', async () => {
  const folder = repository('below', { 'club/handbook.yaml': HANDBOOK, 'club/ladders/bench-press.md': ladder(), 'ladders/squat.md': ladder({ id: 'squat' }) })
  write(folder, { 'club/ladders/bench-press.md': ladder({ title: 'Press on a bench' }), 'ladders/squat.md': ladder({ id: 'squat', title: 'Squats' }) })
  const { typed } = await reviewed(folder, 'HEAD', '--workspace', 'club')
  assert.deepEqual(typed.map(({ subject, is }) => [subject.ladder, is?.file]), [['bench-press', 'ladders/bench-press.md']])
})

test('what a handbook extends is read at the same commit where it lies in the repository, and from disk where it is installed', async () => {
  const below = { 'below/handbook.yaml': HANDBOOK, 'below/ladders/bench-press.md': ladder() }
  const installed = { 'node_modules/press/handbook.yaml': HANDBOOK, 'node_modules/press/ladders/bench-press.md': ladder() }
  const own = (extended: string) => ({ 'club/handbook.yaml': `${HANDBOOK}extends: ${extended}\n`, 'club/ladders/squat.md': ladder({ id: 'squat', title: 'Squat' }) })
  const beside = repository('extends-beside', { ...below, ...own('../below') })
  write(beside, { 'below/ladders/bench-press.md': ladder({ title: 'Press on a bench' }) })
  assert.deepEqual(await kinds(beside, 'HEAD', '--workspace', 'club'), ['wording-changed'])
  const packaged = repository('extends-installed', { ...installed, ...own('press'), '.gitignore': 'node_modules\n' })
  write(packaged, { 'club/ladders/squat.md': ladder({ id: 'squat', title: 'Squats' }) })
  assert.deepEqual(await kinds(packaged, 'HEAD', '--workspace', 'club'), ['wording-changed'])
})

// — what cannot be compared —

test('where there is no repository, no folder or no such revision, one sentence says so', async () => {
  const nowhere = folderNamed('no-repository')
  write(nowhere, FILES)
  assert.deepEqual(await run(nowhere, 'review', 'HEAD'), { code: 2, out: '', note: 'This folder is not in a git repository, so there is nothing to compare with.\n' })
  const { code, note } = await run(nowhere, 'review', 'HEAD', '--workspace', 'gone')
  assert.deepEqual([code, note], [2, `There is no folder "${path.join(nowhere, 'gone')}".\n`])
  for (const revision of ['v9', '', 'HEAD:ladders', '@{u}', 'HEAD~5']) {
    assert.deepEqual(await run(changed, 'review', revision), { code: 2, out: '', note: `There is no revision "${revision}" here. Name a branch, a tag or a commit.\n` })
  }
})

test('a revision that begins with a hyphen is a revision that is not there, never an option', async () => {
  const marker = path.join(changed, 'marker')
  for (const revision of ['-rf', '--output=marker', '--upload-pack=touch marker']) {
    assert.deepEqual(await run(changed, 'review', '--', revision), { code: 2, out: '', note: `There is no revision "${revision}" here. Name a branch, a tag or a commit.\n` })
    const { code, note } = await run(changed, 'review', revision)
    assert.equal(code, 2)
    assert.match(note, /^There is no option "-/)
  }
  assert.ok(!existsSync(marker))
})

test('one revision or two, and a format there is, else it is said how to ask', async () => {
  assert.match((await run(changed, 'review')).note, /^Name one revision to compare the working tree with, or two to compare with one another\.\nrungbook review REVISION/)
  assert.match((await run(changed, 'review', 'HEAD', 'HEAD', 'HEAD')).note, /^Name one revision/)
  assert.match((await run(changed, 'review', 'HEAD', '--format', 'html')).note, /^--format must be one of text, markdown, json, sarif, not "html"\.\n/)
})

test('in a shallow clone it is said that its history is short', async () => {
  const whole = repository('whole', FILES)
  write(whole, { 'ladders/bench-press.md': ladder({ title: 'Press on a bench' }) })
  commit(whole, 'second')
  const shallow = path.join(path.dirname(whole), 'shallow')
  git(path.dirname(whole), 'clone', '--quiet', '--depth', '1', `file://${whole}`, shallow)
  assert.deepEqual(await run(shallow, 'review', 'HEAD~1'), { code: 2, out: '', note: 'There is no revision "HEAD~1" here. This clone is shallow: fetch more of its history.\n' })
  assert.deepEqual(await kinds(shallow, 'HEAD'), [])
})

test('a ladder in the middle of a merge is left out on both sides, and it is said so', async () => {
  const folder = repository('conflict', { ...FILES, 'ladders/squat.md': ladder({ id: 'squat', title: 'Squat' }) })
  write(folder, { 'ladders/bench-press.md': CONFLICT, 'ladders/squat.md': ladder({ id: 'squat', title: 'Squats' }) })
  const now = await reviewed(folder, 'HEAD')
  assert.deepEqual(now.notes, ['ladders/bench-press.md cannot be read now; it is left out.'])
  assert.deepEqual(now.typed.map(({ subject }) => subject.ladder), ['squat'])
  commit(folder, 'by mistake')
  write(folder, { 'ladders/bench-press.md': ladder() })
  assert.deepEqual(await run(folder, 'review', 'HEAD'), { code: 0, out: 'ladders/bench-press.md cannot be read at the base; it is left out.\n', note: '' })
  assert.deepEqual(await run(folder, 'review', 'HEAD', '--format', 'markdown'), { code: 0, out: `${COMMENT_MARK}\nladders/bench-press.md cannot be read at the base; it is left out.\n`, note: '' })
})

test('where an amendment cannot be read the ladder it amends is left out, for nobody took out what it says', async () => {
  const amendment = 'amends: bench-press\nbecause: Ours lift boats.\nrungs: [{ id: kg-2, entry: { reps: 14 } }]\n'
  const folder = repository('amendment', { 'below/handbook.yaml': HANDBOOK, 'below/ladders/bench-press.md': ladder(), 'club/handbook.yaml': `${HANDBOOK}extends: ../below\n`, 'club/ladders/bench-press.md': `---\n${amendment}---\n` })
  write(folder, { 'club/ladders/bench-press.md': `---\n${amendment}=======\n---\n` })
  const { notes, typed } = await reviewed(folder, 'HEAD', '--workspace', 'club')
  assert.deepEqual(notes, ['ladders/bench-press.md cannot be read now; it is left out.'])
  assert.deepEqual(typed, [])
})

test('a file that is no text, or that this clone does not hold, is left out and named', async () => {
  const folder = repository('unreadable', { ...FILES, 'ladders/abs.md': ladder({ id: 'abs', title: 'Abs' }), 'ladders/squat.md': ladder({ id: 'squat', title: 'Squat' }) })
  const blob = git(folder, 'rev-parse', 'HEAD:ladders/abs.md')
  rmSync(path.join(folder, '.git/objects', blob.slice(0, 2), blob.slice(2)))
  write(folder, { 'ladders/bench-press.md': Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0, 1, 2, 3) })
  const { notes, typed, followed } = await reviewed(folder, 'HEAD')
  assert.deepEqual(notes, ['ladders/abs.md cannot be read at the base; it is left out.', 'ladders/bench-press.md cannot be read now; it is left out.'])
  assert.deepEqual([typed, followed], [[], []])
})

test('a handbook.yaml that cannot be read, then or now, is said, and nothing is compared', async () => {
  const folder = repository('handbook', { ...FILES, 'handbook.yaml': 'title: [\n' })
  write(folder, { 'handbook.yaml': HANDBOOK })
  const { notes, typed, edition } = await reviewed(folder, 'HEAD')
  assert.deepEqual([typed, edition], [[], 'no change'])
  assert.equal(notes.length, 1)
  assert.match(notes[0] ?? '', /^The handbook cannot be read at the base, so nothing can be compared: /)
  commit(folder, 'mended')
  write(folder, { 'handbook.yaml': 'title: [\n' })
  assert.match((await reviewed(folder, 'HEAD')).notes[0] ?? '', /^The handbook cannot be read now, so nothing can be compared: /)
})

test('a commit without a workspace is said to hold none', async () => {
  const folder = repository('before-all', { 'README.md': 'Nothing yet.\n' })
  write(folder, FILES)
  assert.match((await reviewed(folder, 'HEAD')).notes[0] ?? '', /^The handbook cannot be read at the base, so nothing can be compared: /)
})

// — a repository that is not to be trusted —

test('no program of the repository’s own is run', async () => {
  const folder = repository('programs', { ...FILES, '.gitattributes': '*.md filter=own diff=own\n' })
  const marker = path.join(folder, 'it-ran')
  const trap = path.join(folder, '.git/trap.sh')
  writeFileSync(trap, `#!/bin/sh\ntouch '${marker}'\ncat\n`)
  chmodSync(trap, 0o755)
  for (const hook of ['post-checkout', 'post-index-change', 'reference-transaction', 'fsmonitor-watchman']) {
    write(folder, { [`.git/own/${hook}`]: readFileSync(trap) })
    chmodSync(path.join(folder, '.git/own', hook), 0o755)
  }
  const settings = { 'core.fsmonitor': trap, 'core.pager': trap, 'pager.log': trap, 'pager.ls-tree': trap, 'core.hooksPath': path.join(folder, '.git/own'), 'core.editor': trap, 'core.sshCommand': trap, 'diff.external': trap, 'diff.own.command': trap, 'diff.own.textconv': trap, 'filter.own.smudge': trap, 'filter.own.clean': trap, 'core.askPass': trap, 'uploadpack.packObjectsHook': trap }
  for (const [key, value] of Object.entries(settings)) git(folder, 'config', key, value)
  git(folder, 'config', 'alias.rev-parse', `!${trap}`)
  writeFileSync(path.join(folder, 'ladders/bench-press.md'), ladder({ title: 'Press on a bench' }))
  for (const format of ['text', 'markdown', 'json', 'sarif']) assert.equal((await run(folder, 'review', 'HEAD', '--format', format)).code, 0)
  assert.equal((await run(folder, 'review', 'nowhere')).code, 2)
  assert.ok(!existsSync(marker), 'a program of the repository was run')
  git(folder, 'status')
  assert.ok(existsSync(marker), 'the trap would not have closed')
})

test('a review writes nothing into the repository', async () => {
  const folder = repository('untouched', FILES)
  write(folder, { 'ladders/bench-press.md': ladder({ title: 'Press on a bench' }) })
  const state = (): string[] => ['index', 'HEAD', 'config', 'logs/HEAD'].map((name) => readFileSync(path.join(folder, '.git', name)).toString('base64'))
  const before = state()
  await run(folder, 'review', 'HEAD')
  assert.deepEqual(state(), before)
})

// — words that mean something to whoever prints them —

const HOSTILE = ['@everyone #1', '<!-- hidden', 'a --> b', 'x | y | z', '``` `code`', '</details></summary>', '::error file=a::b', '%0A::error::x', '=HYPERLINK("x")', '<img src=x onerror=y>', '[a](https://evil.example)', '**bold** _it_ ~no~', 'javascript:x', '$(touch x)', "'; drop", '&lt;b&gt;']

test('titles and notes that hold markup, mentions, table cells or commands come out harmless', async () => {
  const files = (words: readonly string[]) => Object.fromEntries(words.map((title, index) => [`ladders/l-${index}.md`, ladder({ id: `l-${index}`, title, stop: `aaaa bbbb cccc dddd eeee ffff ${title}` })]))
  const folder = repository('hostile', { 'handbook.yaml': HANDBOOK, ...files(HOSTILE.map(() => 'plain')) })
  write(folder, files(HOSTILE))
  const { code, out } = await run(folder, 'review', 'HEAD', '--format', 'markdown')
  assert.equal(code, 0)
  const [table = '', ...diagrams] = out.split('```mermaid')
  const ours = table.replaceAll(COMMENT_MARK, '').replace(/<\/?(details|summary)>|<br>|\*\*(The next edition: [a-z -]+|Look at these first)\*\*/g, '')
  assert.doesNotMatch(ours, /[<>@`*_~[\]\\]|#(?!\d+;)|https?:/)
  const rows = ours.split('\n').filter((line) => line.startsWith('|'))
  assert.ok(rows.length >= 2 * HOSTILE.length)
  for (const row of rows) assert.equal(row.match(/\|/g)?.length, 5, row)
  for (const diagram of diagrams) assert.equal(diagram.match(/```/g)?.length, 1, diagram)
  for (const line of out.split('\n')) assert.doesNotMatch(line.trim(), /^::|^=/)
  for (const line of (await run(folder, 'review', 'HEAD')).out.split('\n')) assert.doesNotMatch(line.trim(), /^::/)
  const { typed } = await reviewed(folder, 'HEAD')
  for (const words of HOSTILE) assert.ok(typed.some(({ after }) => after?.text === words), words)
  sarifResults((await run(folder, 'review', 'HEAD', '--format', 'sarif')).out)
})

test('a changed ladder is drawn with its hostile title, and its diagram ends no fence and commands no workflow', async () => {
  const title = 'a title that is long ::error::x ``` and'
  const folder = repository('hostile-diagram', FILES)
  write(folder, { 'ladders/bench-press.md': ladder({ weights: [20, 23] }).replace('title: Rung 2', `title: ${JSON.stringify(title)}`) })
  const { out } = await run(folder, 'review', 'HEAD', '--format', 'markdown')
  assert.match(out, /```mermaid\nflowchart BT\n/)
  assert.equal(out.match(/```/g)?.length, 2)
  for (const line of out.split('\n')) assert.doesNotMatch(line.trim(), /^::/)
})

test('text for a comment holds nothing that moves the cursor or turns the line', () => {
  assert.equal(forComment('a\u001b[31mred\u202egnp\u0007\r\n::error\u200b'), 'a &#91;31mred gnp   &#58;&#58;error ')
  assert.equal(forComment('@everyone #12'), '&#64;&#8203;everyone &#35;&#8203;12')
})

test('a title that moves the cursor or turns the line is left out with its ladder, and its file’s name begins no line', async () => {
  const folder = repository('escapes', FILES)
  write(folder, { 'ladders/bench-press.md': ladder({ title: 'red \u001b[31m \u202e gnp' }), 'ladders/a\n::error::b.md': 'x' })
  for (const format of ['text', 'markdown', 'json', 'sarif']) {
    const { code, out } = await run(folder, 'review', 'HEAD', '--format', format)
    assert.equal(code, 0)
    assert.doesNotMatch(out, /\u001b|\u202e|^\s*::/m, format)
  }
  assert.match((await run(folder, 'review', 'HEAD')).out, /^ladders\/a\\u000a::error::b\.md cannot be read now; it is left out\.$/m)
})

// — a comment as long as it may be —

const MOST = 65_536

test('four hundred changed rungs fit into one comment, which says what was left out', async () => {
  const weights = (from: number): number[] => Array.from({ length: 400 }, (_, index) => from + index / 8)
  const folder = repository('long', { ...FILES, 'ladders/bench-press.md': ladder({ title: '|@<>&'.repeat(16), weights: weights(20) }) })
  write(folder, { 'ladders/bench-press.md': ladder({ title: '|@<>&'.repeat(16), weights: weights(21) }) })
  const { code, out } = await run(folder, 'review', 'HEAD', '--format', 'markdown')
  assert.equal(code, 0)
  assert.ok(out.length <= MOST && out.length > MOST / 2, `${out.length}`)
  assert.match(out, /\nThis comment is as long as it may be; \d+ parts are shortened or left out\. Run `rungbook review` to see them\.\n$/)
  assert.equal(out.match(/<details>/g)?.length, out.match(/<\/details>/g)?.length)
  assert.match(out, /<summary>Typed: 400<\/summary>/)
})

test('notes without end fit into one comment too', async () => {
  const folder = repository('notes', FILES)
  write(folder, Object.fromEntries(Array.from({ length: 900 }, (_, index) => [`ladders/${'@'.repeat(20)}${index}.md`, 'x'])))
  const { out } = await run(folder, 'review', 'HEAD', '--format', 'markdown')
  assert.ok(out.length <= MOST, `${out.length}`)
  assert.match(out, /This comment is as long as it may be;/)
})

test('of more than twenty changes that could hurt somebody the comment says how many more there are', async () => {
  const notes = Array.from({ length: 6 }, (_, index) => `stop sign number ${'abcdef'[index]?.repeat(6)}`)
  const files = (list: readonly string[]) => Object.fromEntries(['one', 'two', 'three', 'four'].map((id) => [`ladders/${id}.md`, ladder({ id, title: id }).replace(/^stop: .*$/m, `stop: ${JSON.stringify(list)}`)]))
  const folder = repository('unsafe', { 'handbook.yaml': HANDBOOK, ...files(notes) })
  write(folder, files(['something else entirely']))
  const { out } = await run(folder, 'review', 'HEAD', '--format', 'markdown')
  assert.match(out, /\n- and 4 more\n/)
})

// — signing off —

test('a review is signed into the ladder’s own file, matches it, and signing again changes nothing', async () => {
  const folder = folderNamed('seal')
  write(folder, FILES)
  const place = path.join(folder, 'ladders/bench-press.md')
  const { code, out } = await run(folder, 'review', '--seal', 'bench-press', '--by', ' O. "Quote" Wren: #1 ')
  assert.equal(code, 0)
  assert.match(out, /^ladders\/bench-press\.md: reviewed by O\. "Quote" Wren: #1, seal [0-9a-f]{12}\n$/)
  const signed = readFileSync(place, 'utf8')
  assert.equal(signed.replace(/^review: .*\n/m, ''), ladder())
  assert.match(signed, /^review: \{ by: "O\. \\"Quote\\" Wren: #1", on: \d{4}-\d\d-\d\d, seal: "[0-9a-f]{12}" \}$/m)
  assert.equal((await run(folder, 'review', '--seal', 'bench-press', '--by', 'O. "Quote" Wren: #1')).code, 0)
  assert.equal(readFileSync(place, 'utf8'), signed)
  assert.doesNotMatch((await run(folder, 'check')).out, /review|seal/i)
})

test('a review that is there is replaced, over however many lines, and a file keeps its line endings', async () => {
  const folder = folderNamed('reseal')
  const place = path.join(folder, 'ladders/bench-press.md')
  write(folder, { ...FILES, 'ladders/bench-press.md': ladder({ more: 'review:\n  by: Somebody\n  on: 2020-01-01\n  seal: "000000000000"\nsupervision: none\n' }) })
  await run(folder, 'review', '--seal', 'bench-press', '--by', 'A')
  assert.match(readFileSync(place, 'utf8'), /\nreview: \{ by: "A", on: [0-9-]+, seal: "[0-9a-f]{12}" \}\nsupervision: none\n---\n$/)
  write(folder, { 'ladders/bench-press.md': ladder().replaceAll('\n', '\r\n') })
  await run(folder, 'review', '--seal', 'bench-press', '--by', 'A')
  assert.doesNotMatch(readFileSync(place, 'utf8'), /[^\r]\n/)
  assert.match((await run(folder, 'explain', 'bench-press/kg-1')).out, /kg-1|Rung 1/)
})

test('a ladder of another layer is not signed here, but what this one says of it is', async () => {
  const root = folderNamed('seal-layers')
  write(root, { 'below/handbook.yaml': HANDBOOK, 'below/ladders/bench-press.md': ladder(), 'club/handbook.yaml': `${HANDBOOK}extends: ../below\n` })
  const club = path.join(root, 'club')
  const { code, note } = await run(club, 'review', '--seal', 'bench-press', '--by', 'A')
  assert.equal(code, 2)
  assert.match(note, /^"bench-press" is not written in this workspace\. Sign it where it is, or in a file here that says amends: bench-press\.\n/)
  write(club, { 'ladders/ours.md': '---\namends: bench-press\nbecause: Ours lift boats.\nrungs: [{ id: kg-2, entry: { reps: 14 } }]\n---\n' })
  assert.match((await run(club, 'review', '--seal', 'bench-press', '--by', 'A')).out, /^ladders\/ours\.md: reviewed by A, seal /)
  assert.match(readFileSync(path.join(club, 'ladders/ours.md'), 'utf8'), /\nreview: \{ by: "A"/)
  assert.equal(readFileSync(path.join(root, 'below/ladders/bench-press.md'), 'utf8'), ladder())
})

test('who signs must be named, on one line that can be read back, and the ladder must be there', async () => {
  const folder = folderNamed('seal-misuse')
  write(folder, FILES)
  const note = async (...words: string[]): Promise<string> => {
    const { code, note: said } = await run(folder, 'review', ...words)
    assert.equal(code, 2)
    return said.split('\n')[0] ?? ''
  }
  assert.equal(await note('--seal', 'bench-press'), 'Say which ladder is signed off and by whom: --seal press-up --by "A. Reviewer".')
  assert.equal(await note('--seal', 'bench-press', '--by', '  '), 'Say which ladder is signed off and by whom: --seal press-up --by "A. Reviewer".')
  for (const by of ['x'.repeat(81), 'two\nlines', 'turned \u202e']) assert.equal(await note('--seal', 'bench-press', '--by', by), 'A reviewer is named on one line, in at most 80 characters, none of them hidden.')
  assert.equal(await note('--seal', 'squat', '--by', 'A'), 'There is no ladder "squat" here that can be read.')
  assert.equal(readFileSync(path.join(folder, 'ladders/bench-press.md'), 'utf8'), ladder())
})

test('a criterion that changes breaks the review, and the review says by what', async () => {
  const folder = repository('broken-seal', FILES)
  await run(folder, 'review', '--seal', 'bench-press', '--by', 'A')
  commit(folder, 'signed')
  const place = path.join(folder, 'ladders/bench-press.md')
  const signed = readFileSync(place, 'utf8')
  writeFileSync(place, signed.replace('title: Rung 1,', 'title: Rung one,'))
  assert.deepEqual((await reviewed(folder, 'HEAD')).followed, [])
  writeFileSync(place, signed.replace('load_kg: 20', 'load_kg: 20.5'))
  const { typed, followed } = await reviewed(folder, 'HEAD')
  const broken = followed.find(({ kind }) => kind === 'seal-broken')
  assert.deepEqual(broken?.causes, typed.map(({ fingerprint }) => fingerprint))
})
