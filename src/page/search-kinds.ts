/** What may be chosen beside the words on the search page, in the order it is shown. */
export const SEARCH_KINDS = ['movement', 'equipment', 'demand'] as const
export type SearchKind = (typeof SEARCH_KINDS)[number]
