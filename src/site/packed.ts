/** Something in bytes, and what is known of it in JSON. */
type Piece = { readonly bytes: Uint8Array }

/** Pieces as one: a line of JSON that says what follows, then their bytes one behind the other. */
export function packed(pieces: readonly Piece[]): Uint8Array {
  const head = pieces.map(({ bytes, ...about }) => ({ ...about, length: bytes.length }))
  return Buffer.concat([Buffer.from(`${JSON.stringify(head)}\n`), ...pieces.map(({ bytes }) => bytes)])
}

/** The pieces again, as they were packed. */
export function unpacked<Packed extends Piece>(whole: Uint8Array): readonly Packed[] {
  const end = whole.indexOf(10)
  const head = JSON.parse(Buffer.from(whole.subarray(0, end)).toString()) as readonly (Omit<Packed, 'bytes'> & { readonly length: number })[]
  let at = end + 1
  return head.map(({ length, ...about }) => ({ ...about, bytes: whole.subarray(at, (at += length)) }) as unknown as Packed)
}
