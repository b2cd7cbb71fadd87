/** Makes something when it is first wanted, and never again. */
export function once<Made>(make: () => Made): () => Made {
  let made: { readonly value: Made } | undefined
  return () => (made ??= { value: make() }).value
}

/** Makes something of each value once, and keeps it for as long as that very value is held by somebody. */
export function onceOfEach<From extends object, Made>(make: (from: From) => Made): (from: From) => Made {
  const made = new WeakMap<From, { readonly value: Made }>()
  return (from) => {
    const kept = made.get(from) ?? { value: make(from) }
    made.set(from, kept)
    return kept.value
  }
}
