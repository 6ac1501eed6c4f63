/** The command line run in this process: arguments in, what it prints and its exit code out. */
import { existsSync, statSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js'
import { ANSWER_SCHEMAS, type AnswerName, answerJsonSchema } from 'ringproof'
import type { Io } from 'ringproof/cli/io'
import { run } from 'ringproof/cli/run'
import { readSheetFile } from 'ringproof/host/files'
import { folderShelf } from 'ringproof/host/shelf'

const NETLISTS = fileURLToPath(new URL('../../netlists', import.meta.url))

/** What one run left behind. */
export interface Ran {
  readonly code: number
  readonly out: string
  readonly err: string
}

/** A file beside this one. */
export const beside = (file: string): string => fileURLToPath(new URL(file, import.meta.url))

/** Runs `ringproof` with these arguments, on no terminal unless `over` says so. */
export async function ringproof(argv: readonly string[], over: Partial<Io> = {}): Promise<Ran> {
  let [out, err] = ['', '']
  const io: Io = {
    out: (text) => {
      out += text
    },
    err: (text) => {
      err += text
    },
    columns: undefined,
    colour: { out: false, err: false },
    shelf: (folders) => folderShelf(folders, NETLISTS),
    isFile: (path) => existsSync(path) && statSync(path).isFile(),
    readSheet: readSheetFile,
    ...over,
  }
  const code = await run(argv, io)
  return { code, out, err }
}

const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true })
const validators = new Map<string, ValidateFunction>(
  (Object.keys(ANSWER_SCHEMAS) as AnswerName[]).map((name) => [name, ajv.compile(answerJsonSchema(name))]),
)

/** What any JSON has that is printed here. */
export interface Printed {
  readonly ringproof: string
  readonly problems: unknown
  readonly rows: unknown
}

/** The JSON that a run printed, with what its schema finds wrong in it. */
export function jsonOf({ out }: Ran): {
  readonly data: Printed
  readonly wrong: readonly string[]
} {
  const data = JSON.parse(out)
  const validate = validators.get(data.ringproof.replace('/1', ''))
  if (validate === undefined) throw new Error(`no schema for ${data.ringproof}`)
  validate(data)
  return {
    data,
    wrong: (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`),
  }
}
