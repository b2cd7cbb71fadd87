import { startSearch } from './search.ts'

/** What every page runs, and only where the page has something for it. */
startSearch(document, window.location)
