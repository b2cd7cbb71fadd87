import { handbookPlugin } from './src/site/plugin.ts'

type Eleventy = { addPlugin(plugin: typeof handbookPlugin): void }

export default function (eleventy: Eleventy) {
  eleventy.addPlugin(handbookPlugin)
}
