import { mkdirSync, writeFileSync } from 'node:fs'
import path from 'node:path'
import { publish } from '../../src/site/publish.ts'

/** Publishes one edition after another until it is killed: many small files, so that a kill may fall anywhere between writing and swapping. */
const [out = '', first = '1', link] = process.argv.slice(2)
for (let edition = Number(first); ; edition += 1) {
  await publish(out, async (folder) => {
    mkdirSync(path.join(folder, 'pages'))
    for (let page = 0; page < 20; page += 1) writeFileSync(path.join(folder, `pages/${page}.html`), `edition ${edition}\n`)
  }, { link: link === 'link' })
  if (edition === Number(first)) process.stdout.write('one stands\n')
}
