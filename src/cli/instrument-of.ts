/** Which instrument a command line means: a delivered one, a file of one's own, or one of several in such a file. */
import type { MeterRequest } from '../index.ts'
import type { Io } from './io.ts'
import { fileOf } from './target.ts'

/** `my-meter.yaml:needle`: a file, and the name of one instrument in it. */
const ONE_OF_SEVERAL = /^(.+\.ya?ml):([^:/\\]*)$/i

/** The part of the request that says by which instrument is read. */
export function instrumentOf(
  asked: string | undefined,
  io: Io,
): Pick<MeterRequest, 'instrument' | 'instrumentText'> {
  if (asked === undefined) return {}
  const [, file, name] = ONE_OF_SEVERAL.exec(asked) ?? []
  const text = fileOf(file ?? asked, io)
  if (text === undefined) return { instrument: asked }
  return name === undefined ? { instrumentText: text } : { instrument: name, instrumentText: text }
}
