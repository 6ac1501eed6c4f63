// Makes the JSON Schemas and the reference of the sheets. Shared by `npm run docs` and by the test that
// compares: pure, from the library's own tables and the demo sheets to texts by path.
import { HEAD } from './sheets-head.mjs'

/** A whole example per kind of sheet, from the repository. */
const EXAMPLES = {
  set: ['netlists/sets/fescue.yaml', 'netlists/sets/sedge.yaml'],
  unit: ['netlists/units/vetch.yaml'],
  line: ['netlists/lines/depot-exchange.yaml'],
  premises: ['netlists/premises/workshop.yaml', 'tests/unit/sheet/skeletons/premises-station-house.yaml'],
  rewire: ['netlists/rewires/sedge-converted.yaml'],
  job: ['tests/unit/sheet/skeletons/job-sedge-07.yaml'],
  circuit: ['netlists/circuits/two-meshes.yaml'],
}

/** Every file that is written, by its path from the root. `read` gives the text of a file of the repository. */
export function generate(library, read) {
  const { sheetJsonSchema, SHEET_KINDS, answerJsonSchema, ANSWER_SCHEMAS } = library
  const sheets = SHEET_KINDS.map((kind) => [
    `docs/schemas/${kind}.sheet.json`,
    jsonText(sheetJsonSchema(kind)),
  ])
  const answers = Object.keys(ANSWER_SCHEMAS).map((name) => [
    `docs/schemas/${name}.answer.json`,
    jsonText(answerJsonSchema(name)),
  ])
  return Object.fromEntries([...sheets, ...answers, ['docs/sheets.md', reference(library, read)]])
}

function jsonText(schema) {
  return `${JSON.stringify(schema, null, 2)}\n`
}

function reference(library, read) {
  const { sheetJsonSchema, SHEET_KINDS } = library
  const schemas = Object.fromEntries(SHEET_KINDS.map((kind) => [kind, wholeOf(sheetJsonSchema(kind))]))
  const shared = [
    { link: '[a part](#parts)', schema: schemas.circuit.properties.parts.additionalProperties },
    { link: '[a move](#moves)', schema: schemas.rewire.properties.moves.items },
  ]
  const writer = { library, shared, defs: schemas.line.$defs ?? {} }
  const kinds = SHEET_KINDS.flatMap((kind) => [
    `## Sheet: ${kind}`,
    ...objectTables(writer, '', schemas[kind]),
    ...EXAMPLES[kind].flatMap((path) => [
      `Example, \`${path}\`:`,
      `\`\`\`yaml\n${read(path).trimEnd()}\n\`\`\``,
    ]),
  ])
  return `${[HEAD.trim(), ...kinds, ...parts(writer), ...moves(writer)].join('\n\n')}\n`
}

/** A set is a whole set or a variant; the reference shows all keys of both, required as in a whole one. */
function wholeOf(schema) {
  if (schema.properties !== undefined) return schema
  const [alone, variant] = schema.anyOf
  return { ...alone, properties: { ...variant.properties, ...alone.properties } }
}

function parts(writer) {
  const kinds = writer.shared[0].schema.oneOf
  const intro = 'A part is a map: its `kind`, its ends, and what the kind asks for.'
  const tables = kinds.flatMap((schema) => {
    const kind = schema.properties.kind.const
    return [`### ${kind}`, writer.library.PARTS.get(kind).says, ...objectTables(writer, '', schema, '####')]
  })
  return ['## Parts', intro, ...tables]
}

function moves(writer) {
  const intro =
    'A move is a map: one key that says what is done, and what belongs to it. Moves are carried out in order; each one is checked against the wiring that it meets.'
  const tables = writer.shared[1].schema.anyOf.flatMap((schema) => [
    `### ${Object.keys(schema.properties)[0]}`,
    ...objectTables(writer, '', schema, '####'),
  ])
  return ['## Moves', intro, ...tables]
}

/** The table of an object's keys, then the tables of the objects inside it, each under its path. */
function objectTables(writer, path, schema, heading = '###') {
  const required = new Set(schema.required ?? [])
  const rows = Object.entries(schema.properties).map(([key, value]) => {
    const must = required.has(key) ? 'yes' : 'no'
    return `| \`${key}\` | ${must} | ${cell(meaning(value))} | ${cell(formOf(writer, value))} |`
  })
  const table = [
    '| key | must be there | what it says | how it is written |',
    '|---|---|---|---|',
    ...rows,
  ].join('\n')
  const inside = Object.entries(schema.properties).flatMap(([key, value]) =>
    insideOf(writer, path === '' ? key : `${path}.${key}`, value, heading),
  )
  return [table, ...inside]
}

/** Objects below a key: of the value itself, of a map's values, of a list's items, of each form of a union. */
function insideOf(writer, path, schema, heading) {
  if (linkOf(writer, schema) !== undefined) return []
  if (schema.properties !== undefined) {
    return [`${heading} \`${path}\``, ...objectTables(writer, path, schema, heading)]
  }
  if (typeof schema.additionalProperties === 'object') {
    return insideOf(writer, `${path}.<name>`, schema.additionalProperties, heading)
  }
  if (schema.items !== undefined) return insideOf(writer, `${path}[]`, schema.items, heading)
  const forms = (schema.oneOf ?? schema.anyOf ?? []).filter((form) => form.properties !== undefined)
  return forms.flatMap((form) => {
    const [key, value] = Object.entries(form.properties)[0]
    const told = value.const === undefined ? `with \`${key}\`` : `with \`${key}: ${value.const}\``
    return [`${heading} \`${path}\` ${told}`, ...objectTables(writer, path, form, heading)]
  })
}

function meaning(schema) {
  return schema.description ?? (schema.const === undefined ? '' : `always \`${schema.const}\``)
}

function cell(text) {
  return text.replaceAll('|', '\\|').replaceAll('\n', ' ')
}

/** How a value is written, in words; what it is when absent stands behind. */
function formOf(writer, schema) {
  const form = bareForm(writer, schema)
  const { default: absent } = schema
  if (absent === undefined) return form
  const empty = typeof absent === 'object' && Object.values(absent).flat().length === 0
  return `${form}; when absent ${empty ? 'none' : `\`${absent === false ? 'no' : absent}\``}`
}

function bareForm(writer, schema) {
  const link = linkOf(writer, schema)
  if (link !== undefined) return link
  if (schema.$ref !== undefined) return itemForm(writer, schema)
  if (schema.const !== undefined) return `\`${schema.const}\``
  if (schema.enum !== undefined) return schema.enum.map((word) => `\`${word}\``).join(', ')
  const union = schema.oneOf ?? schema.anyOf
  if (union?.some(({ type }) => type === 'boolean')) return '`yes` or `no`'
  if (union !== undefined) return [...new Set(union.map((form) => bareForm(writer, form)))].join(', or ')
  if (schema.type === 'array') return arrayForm(writer, schema)
  if (schema.properties !== undefined)
    return `map of ${Object.keys(schema.properties)
      .map((key) => `\`${key}\``)
      .join(', ')}`
  if (schema.type === 'object') return `map by name: ${bareForm(writer, schema.additionalProperties)}`
  if (schema.type === 'number' || schema.type === 'integer') return numberForm(schema)
  if (Array.isArray(schema.type)) return mixedForm(schema)
  if (schema.type === 'string') return stringForm(writer, schema)
  return 'anything'
}

function mixedForm({ type, examples }) {
  const words = type.map((one) => (one === 'string' ? 'text' : one)).join(' or ')
  return examples === undefined ? words : `${words}, such as \`${examples[0]}\``
}

function stringForm(writer, { examples, pattern }) {
  if (examples === undefined) return 'text'
  const [example] = examples
  if (example === 'a-name' && pattern !== undefined) return 'name'
  const what = pattern === undefined ? quantityName(writer, example) : undefined
  return `${what ?? 'text'}, such as \`${example}\``
}

function arrayForm(writer, schema) {
  const least = schema.minItems === undefined ? '' : ` of at least ${schema.minItems}`
  if (schema.examples !== undefined) return `list, such as \`${schema.examples[0]}\``
  return `list${least}: ${bareForm(writer, schema.items)}`
}

function numberForm(schema) {
  const { minimum, maximum, type } = schema
  const range = minimum === undefined ? '' : `, ${minimum} to ${maximum}`
  return `${type === 'integer' ? 'whole number' : 'number'} without unit${range}`
}

/** An element of an impedance: the one schema that refers to itself. */
function itemForm(writer, schema) {
  const { anyOf } = writer.defs[schema.$ref.split('/').at(-1)]
  const example = anyOf.find((form) => form.examples !== undefined).examples[0]
  return `a resistance, capacitance or inductance such as \`${example}\`, or \`{beside: [...]}\` with at least two elements side by side`
}

/** What a quantity is, told by the example that its dimension gives; undefined for other texts. */
function quantityName({ library }, example) {
  const rows = Object.values(library.DIMENSIONS)
  const named = (text) => rows.find((row) => row.example === text)?.says
  const [value, at] = example.split(' at ')
  const [least, most] = example.split(' to ')
  if (at !== undefined) return `${named(value)} \`at\` ${named(at)}`
  if (most !== undefined) return `${named(least)} \`to\` another`
  return named(example)
}

function linkOf({ shared }, schema) {
  return shared.find((one) => alike(one.schema) === alike(schema))?.link
}

/** A schema as text without its own description, so that one part is like another. */
function alike(schema) {
  const { description: _, ...rest } = schema
  return JSON.stringify(rest)
}
