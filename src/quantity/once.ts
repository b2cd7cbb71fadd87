/** Makes something when it is first wanted, and never again. */
export function once<Made>(make: () => Made): () => Made {
  let made: { readonly value: Made } | undefined
  return () => (made ??= { value: make() }).value
}

/** Makes something when it is wanted, and again where its room was needed meanwhile: for what is large, and wanted for a while. */
export function onceInUse<Made extends object>(make: () => Made): () => Made {
  let last: WeakRef<Made> | undefined
  return () => {
    const kept = last?.deref()
    if (kept) return kept
    const made = make()
    last = new WeakRef(made)
    return made
  }
}

/** Makes something of each value once, and keeps it for as long as that very value is held by somebody. */
export function onceOfEach<From extends object, Made>(make: (from: From) => Made): (from: From) => Made {
  const made = lastOfEach<Made>()
  return (from) => made(from, [], () => make(from))
}

/** Makes something of a value once for as long as no other is asked about: for what many ask of one after another, and nobody holds. */
export function onceInARow<From, Made>(make: (from: From) => Made): (from: From) => Made {
  let last: { readonly from: From; readonly made: Made } | undefined
  return (from) => {
    if (last?.from !== from) last = { from, made: make(from) }
    return last.made
  }
}

/** Keeps for each value what was last made of it, and makes it again when anything else it is made from is not the very same. */
export function lastOfEach<Made>(): (of: object, from: readonly unknown[], make: () => Made) => Made {
  const last = new WeakMap<object, { readonly from: readonly unknown[]; readonly made: Made }>()
  return (of, from, make) => {
    const before = last.get(of)
    if (before && before.from.length === from.length && before.from.every((each, index) => each === from[index])) return before.made
    const made = make()
    last.set(of, { from, made })
    return made
  }
}

/** Makes what stands under a name once. When there are more than `most`, all are forgotten: for what comes again and again, and costs more to make than to find. */
export function onceUnder<Made>(most: number): (name: string, make: () => Made) => Made {
  const made = new Map<string, { readonly value: Made }>()
  return (name, make) => {
    const kept = made.get(name)
    if (kept) return kept.value
    const value = make()
    if (made.size >= most) made.clear()
    made.set(name, { value })
    return value
  }
}
