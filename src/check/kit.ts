/** The words for a thing, in small letters without accents. */
export const kitWords = (thing: string): string[] => thing.toLowerCase().normalize('NFD').replace(/\p{Mark}/gu, '').match(/[\p{Letter}\d]+/gu) ?? []

/** One ending for one and many: mat and mats, box and boxes, shelf and shelves, dummy and dummies, Bank and Bänke. */
export const oneOfMany = (word: string): string => word.replace(/s*e?s?$/, '').replace(/f$/, 'v').replace(/y$/, 'i')
