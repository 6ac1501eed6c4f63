/** Takes in files that the user chose: nothing here is lost, whatever they hold. */
import type { SheetText } from '../../../index.ts'
import { unbundled } from '../../keep/bundle.ts'
import { fileFault } from '../../keep/keep.ts'
import { keepWord, saveSheet } from '../../keep/keeper.ts'
import { ownSheets } from '../../state/shelf.ts'

/** What became of the files. */
export interface TakenIn {
  readonly taken: readonly string[]
  /** Here already with the same text. */
  readonly same: readonly string[]
  /** Another text was here under that name. */
  readonly renamed: readonly (readonly [from: string, to: string])[]
  readonly faults: readonly string[]
}

/** So many bytes of a file are read at most: some hundred sheets. */
const MOST = 64 << 20

export async function takeIn(files: readonly File[]): Promise<TakenIn> {
  const taken: string[] = []
  const same: string[] = []
  const renamed: [string, string][] = []
  const faults: string[] = []
  for (const one of files) {
    const { sheets, faults: its } = await sheetsOf(one)
    faults.push(...its.map((fault) => `${one.name}: ${fault}`))
    for (const sheet of sheets) {
      const here = ownSheets.value.find(({ file }) => file === sheet.file)
      if (here?.text === sheet.text) {
        same.push(sheet.file)
        continue
      }
      const file = here === undefined ? sheet.file : freeFile(sheet.file)
      try {
        const came = await saveSheet(file, sheet.text, null)
        if (came.done === 'conflict') faults.push(`${file}: it came to be here meanwhile and was left alone.`)
        else {
          taken.push(file)
          if (file !== sheet.file) renamed.push([sheet.file, file])
        }
      } catch (thrown) {
        faults.push(`${file}: ${keepWord(thrown)}`)
      }
    }
  }
  return { taken, same, renamed, faults }
}

async function sheetsOf(one: File): Promise<{ sheets: readonly SheetText[]; faults: readonly string[] }> {
  if (one.size > MOST) return { sheets: [], faults: ['It is longer than 64 MiB.'] }
  let text: string
  try {
    text = await one.text()
  } catch {
    return { sheets: [], faults: ['The browser could not read it.'] }
  }
  if (/\.json$/i.test(one.name)) return unbundled(text)
  const fault = fileFault(one.name) ?? (text.length > 1 << 20 ? 'It is longer than 1 MiB.' : undefined)
  return fault === undefined
    ? { sheets: [{ file: one.name, text }], faults: [] }
    : { sheets: [], faults: [fault] }
}

/** The file's name with the first number that makes it free. */
function freeFile(file: string): string {
  const stem = file.replace(/\.yaml$/i, '')
  let number = 2
  while (ownSheets.value.some((one) => one.file === `${stem}-${number}.yaml`)) number += 1
  return `${stem}-${number}.yaml`
}
