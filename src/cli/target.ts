/** Names and files on the command line. */
import type { SheetText } from '../index.ts'
import type { Io } from './io.ts'

/** The sheet's text when a file is meant: what ends in .yaml, or has a slash and is there; else undefined, a name. */
export function fileOf(target: string | undefined, io: Io): SheetText | undefined {
  if (target === undefined) return undefined
  const isFile = /\.ya?ml$/i.test(target) || (/[/\\]/.test(target) && io.isFile(target))
  return isFile ? io.readSheet(target) : undefined
}

/** A key with its value, or no key at all. */
export function given<K extends string, V>(key: K, value: V | undefined): { readonly [key in K]?: V } {
  return value === undefined ? {} : ({ [key]: value } as { readonly [key in K]: V })
}
