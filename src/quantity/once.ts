/** Makes something when it is first wanted, and never again. */
export function once<Made>(make: () => Made): () => Made {
  let made: { readonly value: Made } | undefined
  return () => (made ??= { value: make() }).value
}
