/** What every page runs: it looks what the page has, and fetches only the script for that. */
const has = (selector: string): boolean => document.querySelector(selector) !== null

if (has('#search-results')) void import('./search.ts').then(({ startSearch }) => startSearch(document, window.location))
