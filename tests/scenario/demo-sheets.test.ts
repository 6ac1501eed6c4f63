import { readdirSync } from 'node:fs'
import { join, relative } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { readSheetFile } from 'ringproof/host/files'
import { packagedFolder } from 'ringproof/host/packaged'
import { folderShelf } from 'ringproof/host/shelf'
import { applyMoves } from 'ringproof/rewire/moves'
import { sheetJsonSchema } from 'ringproof/sheet/json-schema'
import type { RewireSheet, SetSheet, SheetKind } from 'ringproof/sheet/model'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'

const root = packagedFolder()
const shelf = folderShelf([], root)
const KINDS: Readonly<Record<string, SheetKind>> = {
  sets: 'set',
  units: 'unit',
  lines: 'line',
  premises: 'premises',
  rewires: 'rewire',
  circuits: 'circuit',
}
const files = Object.keys(KINDS).flatMap((folder) =>
  readdirSync(join(root, folder))
    .sort()
    .map((file) => `${folder}/${file}`),
)

function read<K extends SheetKind>(kind: K, name: string) {
  const text = shelf.find(kind, name)
  if (text === undefined) throw new Error(`no ${kind} ${name}`)
  const { sheet, problems } = readSheet(text, shelf, kind)
  expect(problems).toEqual([])
  if (sheet === undefined) throw new Error(`${kind} ${name} has no sheet`)
  return sheet
}

function rewired(name: string): { from: SetSheet; to: SetSheet; rewire: RewireSheet } {
  const rewire = read('rewire', name) as RewireSheet
  const from = read('set', rewire.set) as SetSheet
  const { set, problems } = applyMoves(from, rewire.moves, () => undefined)
  expect(problems).toEqual([])
  return { from, to: set, rewire }
}

/** What is wired, without names, words and places. */
function wiring(set: SetSheet): unknown {
  const { straps, contacts, joints, slots, cords, handset, strips } = set
  const parts = Object.fromEntries(Object.entries(set.parts).sort(([a], [b]) => (a < b ? -1 : 1)))
  return JSON.parse(JSON.stringify({ straps, contacts, joints, slots, cords, handset, strips, parts }))
}

describe('a demo sheet', () => {
  test.each(files)('%s reads without problems, is named like its file, and has a title and notes', (file) => {
    const kind = KINDS[file.split('/')[0]!]!
    const { sheet, problems } = readSheet(readSheetFile(join(root, file)), shelf, kind)
    expect(problems).toEqual([])
    expect(sheet?.name).toBe(file.replace(/^.*\//, '').replace(/\.yaml$/, ''))
    expect(sheet?.title?.length).toBeGreaterThan(5)
    expect(sheet?.notes?.length).toBeGreaterThan(0)
  })

  test.each(files)('%s names its schema for editors and is found by its name', (file) => {
    const kind = KINDS[file.split('/')[0]!]!
    const { text } = readSheetFile(join(root, file))
    expect(text.split('\n')[0]).toBe(`# yaml-language-server: $schema=../../docs/schemas/${kind}.sheet.json`)
    const name = /^name: (.*)$/m.exec(text)?.[1] ?? ''
    expect(relative(root, shelf.find(kind, name)?.file ?? '')).toBe(file)
  })

  test.each(files)('%s is accepted by an editor that knows its schema', (file) => {
    const kind = KINDS[file.split('/')[0]!]!
    const validate = new Ajv2020({ strict: true, strictTypes: false }).compile(sheetJsonSchema(kind))
    validate(parse(readSheetFile(join(root, file)).text, { schema: 'core' }))
    expect(validate.errors).toBeNull()
  })
})

describe('a demo rewire', () => {
  test.each(files.filter((file) => file.startsWith('rewires/')))(
    '%s is applied without a refusal',
    (file) => {
      const { from, to } = rewired(file.replace(/^rewires\//, '').replace(/\.yaml$/, ''))
      expect(wiring(to)).not.toEqual(wiring(from))
    },
  )

  test.each([
    ['fescue-converted', 'fescue'],
    ['sedge-converted', 'sedge'],
  ])('%s makes the set what a %s is', (name, set) => {
    expect(wiring(rewired(name).to)).toEqual(wiring(read('set', set) as SetSheet))
  })

  test('by the paper for the other set lands one core elsewhere and does all else alike', () => {
    const right = rewired('sedge-converted').to
    const wrong = rewired('sedge-converted-as-fescue').to
    expect(right.cords['handset']?.cores['r2']?.lands).toBe('B2')
    expect(wrong.cords['handset']?.cores['r2']?.lands).toBe('B3')
    const mended = applyMoves(wrong, [{ do: 'land core', what: 'handset.r2', onto: 'B2' }], () => undefined)
    expect(wiring(mended.set)).toEqual(wiring(right))
  })

  test('with joined cores keeps the strap that makes them harmless', () => {
    const { to } = rewired('sedge-cores-joined-harmless')
    expect(Object.keys(to.straps)).toEqual(expect.arrayContaining(['B2-B3', 'B3-B4']))
    expect(to.cords['handset']?.cores['r2']?.lands).toBe('B3')
    expect(to.cords['handset']?.cores['t2']?.lands).toBe('B4')
  })

  test('that leaves the unit out empties the slot that needs one', () => {
    const { to } = rewired('fescue-unit-left-out')
    expect(to.slots['regulator']).toMatchObject({ 'needs unit': true, fitted: 'none' })
  })
})

test('the workshop has one master socket and no set', () => {
  const workshop = read('premises', 'workshop')
  expect(Object.keys(workshop.sockets)).toEqual(['bench'])
  expect(workshop.sets).toEqual({})
})
