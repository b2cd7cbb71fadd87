import assert from 'node:assert/strict'
import { test } from 'vitest'
import { cardText } from '../../src/browser/printed.ts'
import { editionsDataSchema, type EditionsData } from '../../src/page/editions-data.ts'

const data: EditionsData = editionsDataSchema.parse({
  version: 1,
  edition: '2026.3',
  editions: [
    { edition: '2026.3', on: '2026-11-01', since: '2026.2', changed: ['press-up/floor', 'squat'] },
    { edition: '2026.2', since: '2026.1', changed: ['press-up/floor', 'press-up/bench'] },
    { edition: '2026.1', since: '2025.1', changed: { missing: 'no such revision' } },
  ],
})

for (const { card, page, says } of [
  { card: '2026.3', page: 'press-up/floor', says: 'Your card is of this edition, 2026.3.' },
  { card: '2026.2', page: 'press-up/floor', says: 'Your card is of edition 2026.2. This page has changed since, in edition 2026.3: go by the page, not by the card.' },
  { card: '2026.1', page: 'press-up/floor', says: 'Your card is of edition 2026.1. This page has changed since, in edition 2026.2 and 2026.3: go by the page, not by the card.' },
  { card: '2026.2', page: 'press-up/bench', says: 'Your card is of edition 2026.2. Nothing on this page has changed since.' },
  { card: '2026.1', page: 'press-up', says: 'Your card is of edition 2026.1. This page has changed since, in edition 2026.2 and 2026.3: go by the page, not by the card.' },
  { card: '2026.2', page: 'squat/deep', says: 'Your card is of edition 2026.2. This page has changed since, in edition 2026.3: go by the page, not by the card.' },
  { card: '2026.2', page: 'row', says: 'Your card is of edition 2026.2. Nothing on this page has changed since.' },
  { card: '2025.1', page: 'row', says: 'Your card is of edition 2025.1; this is edition 2026.3. What has changed between them cannot be said: go by the page, not by the card.' },
  { card: '2019.4', page: 'row', says: 'Your card is of edition 2019.4, which is not listed here; this is edition 2026.3. Go by the page, not by the card.' },
]) {
  test(`a card of ${card} on ${page}: ${says}`, () => assert.equal(cardText(data, card, page), says))
}
