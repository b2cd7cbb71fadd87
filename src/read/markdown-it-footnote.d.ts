declare module 'markdown-it-footnote' {
  import type MarkdownIt from 'markdown-it'
  const footnotes: (markdown: MarkdownIt) => void
  export default footnotes
}
