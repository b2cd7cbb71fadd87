import { startLadder } from './start-ladder.ts'
import { startWorkspace, workspaceAnswers } from './start-workspace.ts'
import { workspaceOption } from './curriculum.ts'
import { Misuse, type Verb } from './verb.ts'

/** `rungbook start`: a handbook, or a ladder, to begin from. */
export const startVerb: Verb = {
  name: 'start',
  says: 'begins a handbook in a new folder, or a ladder by questions',
  usage: `rungbook start DIR [--organisation NAME] [--language CODE] [--units metric|imperial] [--accent "#0b5563"] [--contact WORDS] [--yes]
rungbook start ladder ID [--workspace DIR] [< answers.txt]

  DIR      a new or empty folder; on a terminal you are asked what no option says
  --yes    asks nothing, and takes what is usual for the rest
  ladder   asks for movement, aim and rungs, the easiest first, and shows their loads as you enter them;
           where answers are piped in, one stands on each line, as they are asked, and a line that begins with # is passed over`,
  examples: ['rungbook start club', 'rungbook start club --organisation "Tarnwick Gym Club" --yes', 'rungbook start ladder wall-press', 'rungbook start ladder wall-press --workspace club < answers.txt'],
  choices: { '': ['ladder'], units: ['metric', 'imperial'] },
  options: { ...workspaceOption, ...workspaceAnswers },

  async run(typed, console) {
    const [first, second, ...more] = typed.rest
    if (first === 'ladder') {
      if (second === undefined || more.length > 0) throw new Misuse('Name the one ladder to begin, such as: start ladder wall-press. A folder of that name is begun with: start ./ladder.')
      return startLadder(second, typed, console)
    }
    if (first === undefined || second !== undefined) throw new Misuse('Name one folder to begin in, such as: start club.')
    return startWorkspace(first, typed, console)
  },
}
