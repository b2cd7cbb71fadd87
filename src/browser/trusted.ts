type Vouching<Sink extends string> = Record<Sink, (text: string) => string>

/** What browsers know that ask for a named policy behind every string they run. */
type Trusting = { trustedTypes?: { createPolicy<Sink extends string>(name: string, rules: Vouching<Sink>): Vouching<Sink> } }

/** Rules under a name that the page's policy allows; in a browser that does not ask for one, the rules themselves. */
export const vouching = <Sink extends 'createHTML' | 'createScriptURL'>(name: string, rules: Vouching<Sink>): Vouching<Sink> => (globalThis as Trusting).trustedTypes?.createPolicy(name, rules) ?? rules
