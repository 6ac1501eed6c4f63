/** Everything in one file: how sheets go from one browser to another. */
import type { SheetText } from '../../index.ts'
import { fileFault } from './keep.ts'

/** The file's own first key, with its version. */
const FORMAT = 'sheets/1'

/** A sheet may be so long; the reader of sheets refuses more. */
const LONGEST = 1 << 20

/** All sheets as the text of one JSON file. */
export function bundled(sheets: readonly SheetText[]): string {
  const plain = sheets.map(({ file, text }) => ({ file, text }))
  return `${JSON.stringify({ ringproof: FORMAT, sheets: plain }, null, 2)}\n`
}

/** What such a file holds, and what in it could not be taken, in plain words. */
export interface Unbundled {
  readonly sheets: readonly SheetText[]
  readonly faults: readonly string[]
}

/** Reads one; never throws. Good sheets are taken whatever stands beside them. */
export function unbundled(text: string): Unbundled {
  let read: unknown
  try {
    read = JSON.parse(text)
  } catch {
    return { sheets: [], faults: ['The file is not JSON. Choose a file that was exported here.'] }
  }
  const { ringproof, sheets } = (typeof read === 'object' && read !== null ? read : {}) as Record<
    string,
    unknown
  >
  if (ringproof !== FORMAT) {
    return {
      sheets: [],
      faults: [`The file does not say \`"ringproof": "${FORMAT}"\`. Choose a file that was exported here.`],
    }
  }
  if (!Array.isArray(sheets)) return { sheets: [], faults: ['The file has no list of sheets.'] }
  const taken = new Map<string, SheetText>()
  const faults: string[] = []
  sheets.forEach((one: unknown, at) => {
    const fault = sheetFault(one)
    if (fault !== undefined) faults.push(`Sheet ${at + 1}: ${fault}`)
    else {
      const { file, text: its } = one as SheetText
      if (taken.has(file)) faults.push(`Sheet ${at + 1}: \`${file}\` stands twice; the first was taken.`)
      else taken.set(file, { file, text: its })
    }
  })
  return { sheets: [...taken.values()], faults }
}

function sheetFault(one: unknown): string | undefined {
  const { file, text } = (typeof one === 'object' && one !== null ? one : {}) as Record<string, unknown>
  if (typeof file !== 'string' || typeof text !== 'string') return 'it has no file name or no text.'
  if (text.length > LONGEST) return `\`${file}\` is longer than 1 MiB.`
  const fault = fileFault(file)
  return fault === undefined ? undefined : `\`${file}\`: ${fault}`
}
