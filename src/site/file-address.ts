import { fileURLToPath, pathToFileURL } from 'node:url'

/** The file an address such as file:///home/coach/my%20club names; undefined for what is no file, or no address. */
export function pathOfUri(uri: string): string | undefined {
  try {
    return fileURLToPath(uri)
  } catch {
    return undefined
  }
}

/** The address of a file, half characters in its name shown as unknown. */
export const uriOfPath = (file: string): string => pathToFileURL(file).href
