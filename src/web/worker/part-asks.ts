/** Parts to be fitted: what each kind asks for, and a move read from what somebody typed, by the sheets' own reader. */
import { type JsonSchema, type Move, ProblemError, readSheetText, sheetJsonSchema } from '../../index.ts'
import type { PartField, PartForm } from '../talk/part-forms.ts'

interface Field {
  readonly type?: string
  readonly description?: string
  readonly examples?: readonly unknown[]
  readonly const?: unknown
  readonly enum?: readonly string[]
  readonly anyOf?: readonly Field[]
  readonly oneOf?: readonly Field[]
  readonly properties?: Readonly<Record<string, Field>>
  readonly required?: readonly string[]
  readonly items?: Field
}

let forms: readonly PartForm[] | undefined

/** The kinds whose values are plain words and quantities; others are written in a sheet. */
export function partForms(): readonly PartForm[] {
  forms ??= made(sheetJsonSchema('rewire'))
  return forms
}

function made(schema: JsonSchema): readonly PartForm[] {
  const moves = (schema as Field).properties?.moves?.items?.anyOf ?? []
  const fit = moves.find(({ properties = {} }) => Object.hasOwn(properties, 'fit part'))
  const kinds = fit?.properties?.with?.oneOf ?? []
  return kinds.flatMap(({ properties = {}, required = [] }) => {
    const fields = Object.entries(properties)
      .filter(([key]) => key !== 'kind')
      .flatMap(([key, field]) => fieldOf(key, field, required.includes(key)))
    const known = new Set(fields.map(({ key }) => key))
    const isPlain = required.every((key) => key === 'kind' || known.has(key))
    const { kind } = properties
    return isPlain && typeof kind?.const === 'string' ? [{ part: kind.const, fields }] : []
  })
}

function fieldOf(key: string, field: Field, needed: boolean): readonly PartField[] {
  const { type, description: says = key, examples = [], enum: words } = field
  const isEnd =
    type === 'string' &&
    examples.length === 0 &&
    words === undefined &&
    /\bend\b|either polarity|the other$/.test(says)
  const text = field.anyOf?.find((one) => one.type === 'string' && one.examples !== undefined)
  if (type !== 'string' && type !== 'number' && text === undefined) return []
  const example = examples[0] ?? text?.examples?.[0]
  return [
    {
      key,
      says,
      needed,
      sort: words !== undefined ? 'word' : type === 'number' ? 'number' : isEnd ? 'end' : 'quantity',
      ...(example === undefined ? {} : { example: String(example) }),
      ...(words === undefined ? {} : { words }),
    },
  ]
}

/** @throws ProblemError with what the reader finds wrong */
export function partMove(
  set: string,
  name: string,
  part: string,
  values: Readonly<Record<string, string>>,
): Move {
  const written = Object.entries(values).flatMap(([key, value]) => {
    const text = value.trim()
    if (text === '') return []
    const isNumber = /^-?\d+(\.\d+)?$/.test(text)
    return [`${JSON.stringify(key)}: ${isNumber ? text : JSON.stringify(text)}`]
  })
  const spec = [`kind: ${JSON.stringify(part)}`, ...written].join(', ')
  const text = [
    'ringproof: 1',
    'sheet: rewire',
    'name: bench',
    `set: ${JSON.stringify(set)}`,
    'moves:',
    `  - fit part: ${JSON.stringify(name)}`,
    `    with: {${spec}}`,
    '',
  ].join('\n')
  const reach = { find: () => ({ file: '', text: '' }), names: () => [] }
  const { sheet, problems } = readSheetText({ file: 'bench', text }, reach, 'rewire')
  const move = sheet?.moves[0]
  if (move === undefined) {
    // the text was made here: its lines are nothing to look up
    throw new ProblemError(problems.map(({ place: _place, excerpt: _excerpt, ...problem }) => problem))
  }
  const { place: _place, date: _date, ...plain } = move
  return plain
}
