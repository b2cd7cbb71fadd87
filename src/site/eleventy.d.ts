/** What we use of the host; it ships no types of its own. */
declare module '@11ty/eleventy' {
  export type Config = {
    addPlugin(plugin: (config: Config) => void): void
    addGlobalData(name: string, value: unknown): void
    addTemplate(name: string, template: unknown): void
    benchmarkManager: { get(group: string): { setIsVerbose(isVerbose: boolean): void } }
  }
  export default class Eleventy {
    constructor(input: string, output: string, options: { quietMode: boolean; configPath?: string; config: (config: Config) => void })
    disableLogger(): void
    toJSON(): Promise<{ url: string; content: string }[]>
  }
}
