import { writeFile } from 'node:fs/promises'
import path from 'node:path'
import { nearest } from '../read/nearest.ts'
import { readCurriculum } from '../read/read-curriculum.ts'
import { tableText } from '../read/write-table.ts'
import { readWorkspace } from '../site/disk.ts'
import { folderOf, workspaceOption } from './curriculum.ts'
import { curriculumJson } from './export-json.ts'
import { templateLadder } from './export-template.ts'
import { textReport } from './report-text.ts'
import { EXIT, Misuse, type Console, type Typed, type Verb } from './verb.ts'

/** `rungbook export`: a curriculum as a table for a spreadsheet, or as one JSON. */
export const exportVerb: Verb = {
  name: 'export',
  says: 'writes ladders as a table for a spreadsheet, or the whole curriculum as one JSON',
  usage: `rungbook export [LADDER...] [--format csv|json] [--output FILE] [--workspace DIR]
rungbook export --template [--output FILE]

  LADDER      only these ladders; all of them unless given
  --template  a table with every column and one small ladder, to begin from
  --output    writes to a new file; without it, to the output`,
  examples: ['rungbook export --output ladders.csv', 'rungbook export press-up dip > two.csv', 'rungbook export --format json', 'rungbook export --template --output template.csv'],
  options: { ...workspaceOption, format: { type: 'string' }, output: { type: 'string' }, template: { type: 'boolean' } },
  choices: { format: ['csv', 'json'] },

  async run(typed, console) {
    const { format = 'csv', template } = typed.options
    if (format !== 'csv' && format !== 'json') throw new Misuse(`--format must be csv or json, not "${String(format)}".`)
    if (template === true) return written(tableText([templateLadder()], true), typed, console)
    console.progress('reading the ladders')
    const { layers, findings } = await readWorkspace(await folderOf(typed, console))
    const reading = layers.length === 0 ? { findings: [] } : readCurriculum(layers)
    const curriculum = 'value' in reading ? reading.value : undefined
    const unread = [...findings, ...reading.findings]
    if (!curriculum || unread.length > 0) {
      console.note(textReport(unread, new Map(), false))
      return EXIT.findings
    }
    const absent = typed.rest.find((id) => !curriculum.ladders.some((ladder) => ladder.id === id))
    if (absent !== undefined) {
      const like = nearest(absent, curriculum.ladders.map(({ id }) => id))
      throw new Misuse(`There is no ladder "${absent}" here.${like ? ` Did you mean ${like}?` : ''}`)
    }
    const ladders = curriculum.ladders.filter(({ id }) => typed.rest.length === 0 || typed.rest.includes(id))
    return written(format === 'csv' ? tableText(ladders) : curriculumJson({ ...curriculum, ladders }), typed, console)
  },
}

async function written(text: string, { options }: Typed, console: Console): Promise<number> {
  if (typeof options.output !== 'string') {
    console.out(text)
    return EXIT.fine
  }
  const made = await writeFile(path.resolve(console.folder, options.output), text, { flag: 'wx' }).then(() => true, (error: NodeJS.ErrnoException) => error.code)
  if (made !== true) throw new Misuse(made === 'EEXIST' ? `"${options.output}" is there already, and is not written over. Name another file, or take it away.` : `"${options.output}" cannot be written (${made}).`)
  console.note(`written to ${options.output}\n`)
  return EXIT.fine
}
