import { POLICY } from './frame.ts'

/** Seconds a copy may be kept of what never changes under its name. */
export const YEAR_S = 31_536_000

/** What every file of a handbook is served with, whatever serves it. `frame-ancestors` works in a header alone, so it is not in the pages. */
export const ALWAYS: readonly (readonly [name: string, value: string])[] = [
  ['Content-Security-Policy', `${POLICY}; frame-ancestors 'none'`],
  ['Strict-Transport-Security', `max-age=${YEAR_S}`],
  ['X-Content-Type-Options', 'nosniff'],
  ['Referrer-Policy', 'no-referrer'],
  ['Permissions-Policy', 'camera=(), microphone=(), geolocation=(), payment=(), usb=()'],
]

/** How long a copy may be kept: for a year where the name changes with the content, else only to be asked for again each time. */
export const KEPT = `public, max-age=${YEAR_S}, immutable`
export const ASKED = 'no-cache'

/** Folders, below the root or that of a language, in which every name changes with the content. */
export const NAMED_BY_CONTENT = ['pagefind/fragment', 'pagefind/index', 'pictures'] as const
/** The same below each further part of a search index. */
const NAMED_IN_PARTS = ['fragment', 'index'] as const

/** What a file is, by how its name ends. */
export const TYPES: Readonly<Record<string, string>> = {
  html: 'text/html; charset=utf-8',
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  json: 'application/json',
  svg: 'image/svg+xml',
  xml: 'application/xml',
  webmanifest: 'application/manifest+json',
  pdf: 'application/pdf',
  png: 'image/png',
  jpg: 'image/jpeg',
  webp: 'image/webp',
}

/** Headers for static hosts that read a file of this form: a path, then indented headers. A host that adds both cache lifetimes up asks each time, which is slower and right. */
export const headersFile = (folders: readonly string[], parts = 1): string =>
  [
    `/*\n${[...ALWAYS, ['Cache-Control', ASKED]].map(([name, value]) => `  ${name}: ${value}\n`).join('')}`,
    ...folders.flatMap((under) => [...NAMED_BY_CONTENT, ...Array.from({ length: parts - 1 }, (_, before) => NAMED_IN_PARTS.map((kind) => `pagefind/part-${before + 1}/${kind}`)).flat()].map((folder) => `\n/${under}${folder}/*\n  Cache-Control: ${KEPT}\n`)),
  ].join('')

/** A table for object storage, whose files carry their own headers: a pattern of names, a header and its value a line, between tabs; later lines win. */
export const objectStorageTable = (): string =>
  [
    ['pattern', 'header', 'value'],
    ...ALWAYS.map(([name, value]) => ['*', name, value]),
    ['*', 'Cache-Control', ASKED],
    ...[...NAMED_BY_CONTENT, ...NAMED_IN_PARTS.map((kind) => `pagefind/part-*/${kind}`)].flatMap((folder) => [folder, `*/${folder}`].map((place) => [`${place}/*`, 'Cache-Control', KEPT])),
    ['*', 'Content-Type', 'application/octet-stream'],
    ...Object.entries(TYPES).flatMap(([end, type]) => ['', '.gz', '.br'].map((packed) => [`*.${end}${packed}`, 'Content-Type', type])),
    ['*.gz', 'Content-Encoding', 'gzip'],
    ['*.br', 'Content-Encoding', 'br'],
  ]
    .map((row) => `${row.join('\t')}\n`)
    .join('')
