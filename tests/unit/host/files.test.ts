import { execFileSync } from 'node:child_process'
import { join } from 'node:path'
import { readSheetFile } from 'ringproof/host/files'
import { folderShelf } from 'ringproof/host/shelf'
import { ProblemError } from 'ringproof/problem'
import { readSheet } from 'ringproof/sheet/read'
import { describe, expect, test } from 'vitest'
import { folderWith } from './_folder.ts'

const thrownBy = (path: string): unknown => {
  try {
    return readSheetFile(path)
  } catch (thrown) {
    return thrown
  }
}

describe('a sheet file', () => {
  test('is read as it stands, under the name that was asked for', () => {
    const folder = folderWith({ 'a.yaml': 'title: 3.3 kΩ\n' })
    const file = join(folder, 'a.yaml')
    expect(readSheetFile(file)).toEqual({ file, text: 'title: 3.3 kΩ\n' })
  })

  test('that is not there, a folder or a pipe, is a problem and no error of the system', () => {
    const folder = folderWith({ 'a.yaml': '' })
    execFileSync('mkfifo', [join(folder, 'pipe.yaml')])
    const cases = [
      ['b.yaml', 'is not there'],
      ['a.yaml/b.yaml', 'is not there'],
      ['.', 'is a folder'],
      ['pipe.yaml', 'cannot be read'],
    ] as const
    for (const [file, why] of cases) {
      const thrown = thrownBy(join(folder, file))
      expect(thrown).toBeInstanceOf(ProblemError)
      expect((thrown as ProblemError).problems).toMatchObject([{ code: 'file-missing', severity: 'error' }])
      expect((thrown as ProblemError).problems[0]?.found).toContain(why)
    }
    expect(thrownBy(`${folder}/a\0.yaml`)).toBeInstanceOf(ProblemError)
  })

  test('that is not there is named with its end, and with nothing that could steer a terminal', () => {
    const found = (path: string) => (thrownBy(path) as ProblemError).problems[0]?.found
    expect(found('no/\u001B[2Jsuch.yaml')).toBe('`no/·[2Jsuch.yaml`, which is not there')
    expect(found(`no/${'x/'.repeat(99)}such.yaml`)).toMatch(/^`…[x/]{110}such\.yaml`, which is not there$/)
  })

  test.each([
    ['plain', Buffer.alloc(3 << 20, 'a')],
    ['one byte over', Buffer.alloc((1 << 20) + 1, 'a')],
    ['behind a byte order mark', Buffer.concat([Buffer.from('\uFEFF'), Buffer.alloc(2 << 20, 'a')])],
    ['cut within a character', Buffer.alloc(2 << 20, 'Ω')],
  ])('of more than 1 MiB is refused as too big without being read whole: %s', (_, content) => {
    const folder = folderWith({ 'a.yaml': content })
    const text = readSheetFile(join(folder, 'a.yaml'))
    expect(text.text.length).toBeLessThan((1 << 20) + 32)
    const { problems } = readSheet(text, folderShelf([], folder))
    expect(problems.map(({ code }) => code)).toEqual(['too-big'])
  })
})
