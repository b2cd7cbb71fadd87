/** What every page runs: it looks what the page has, and fetches only the script for that. */
const has = (selector: string): boolean => document.querySelector(selector) !== null

if (has('#search-results')) void import('./search.ts').then(({ startSearch }) => startSearch(document, window.location))

if (has('#offline') && window.isSecureContext) void import('./offline.ts').then(({ startOffline }) => startOffline(document, new URL(document.body.dataset.root ?? './', window.location.href)))
