declare module 'markdown-it-deflist' {
  import type MarkdownIt from 'markdown-it'
  const definitionLists: (markdown: MarkdownIt) => void
  export default definitionLists
}
