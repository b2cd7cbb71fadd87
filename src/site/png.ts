import { deflateSync } from 'node:zlib'
import type { Pixels } from './paint.ts'

/** Checksum of a chunk. Source  the PNG specification, 3rd edition, annex D. */
const TABLE = Array.from({ length: 256 }, (_, index) => Array.from({ length: 8 }).reduce<number>((value) => (value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1), index))
const crc = (bytes: Uint8Array): number => (bytes.reduce((sum, byte) => (TABLE[(sum ^ byte) & 0xff] ?? 0) ^ (sum >>> 8), 0xffffffff) ^ 0xffffffff) >>> 0

const number = (value: number): Buffer => {
  const bytes = Buffer.alloc(4)
  bytes.writeUInt32BE(value)
  return bytes
}

function chunk(name: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(name, 'latin1'), data])
  return Buffer.concat([number(data.length), named, number(crc(named))])
}

/** Pixels as a PNG of eight bits a colour, rows unfiltered: flat colours shrink well as they are. */
export function png({ wide, high, rgb }: Pixels): Buffer {
  const row = wide * 3
  const rows = Buffer.alloc(high * (row + 1))
  for (let y = 0; y < high; y += 1) rows.set(rgb.subarray(y * row, (y + 1) * row), y * (row + 1) + 1)
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', Buffer.concat([number(wide), number(high), Buffer.from([8, 2, 0, 0, 0])])),
    chunk('IDAT', deflateSync(rows, { level: 9 })),
    chunk('IEND', Buffer.alloc(0)),
  ])
}

/** One PNG in the form that browsers ask for by themselves as favicon.ico. */
export function ico(image: Buffer, wide: number): Buffer {
  const head = Buffer.alloc(22)
  head.writeUInt16LE(1, 2) // an icon
  head.writeUInt16LE(1, 4) // one of them
  head.writeUInt8(wide, 6)
  head.writeUInt8(wide, 7)
  head.writeUInt16LE(1, 10)
  head.writeUInt16LE(24, 12)
  head.writeUInt32LE(image.length, 14)
  head.writeUInt32LE(head.length, 18)
  return Buffer.concat([head, image])
}
