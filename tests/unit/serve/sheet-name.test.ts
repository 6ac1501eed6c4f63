import fc from 'fast-check'
import { isSheetPath, sheetNameOf } from 'ringproof/serve/sheet-name'
import { expect, test } from 'vitest'

test.each([
  ['a.yaml', 'a.yaml'],
  ['my%20sets/caf%C3%A9.yaml', 'my sets/café.yaml'],
  ['a/b/c/d.yaml', 'a/b/c/d.yaml'],
])('%s names the sheet %s', (encoded, file) => {
  expect(sheetNameOf(encoded)).toBe(file)
})

test.each([
  '',
  'a',
  'a.yml',
  '.yaml',
  '..',
  '../a.yaml',
  '%2e%2e/a.yaml',
  '%252e%252e/a.yaml',
  'a%2fb.yaml',
  'a%5cb.yaml',
  '/a.yaml',
  'a//b.yaml',
  'a/./b.yaml',
  '.git/a.yaml',
  'node_modules/a.yaml',
  'Node_Modules/a.yaml',
  'c%3aa.yaml',
  'a.yaml%00',
  'a%0d%0a.yaml',
  'a%e2%80%ae.yaml',
  '%ff.yaml',
  'b./a.yaml',
  'a/b/c/d/e.yaml',
  `${'a'.repeat(251)}.yaml`,
])('%s is refused', (encoded) => {
  expect(() => sheetNameOf(encoded)).toThrow(/^400/)
})

test('whatever is let through stays below the folder', () => {
  const part = fc.oneof(fc.string(), fc.constantFrom('..', '.', '%2e%2e', 'a', 'b.yaml', '\\', '/'))
  fc.assert(
    fc.property(fc.array(part, { minLength: 1, maxLength: 5 }), (parts) => {
      if (!isSheetPath(parts)) return
      const { pathname } = new URL(parts.map(encodeURIComponent).join('/'), 'http://any/base/')
      expect(pathname.startsWith('/base/')).toBe(true)
      expect(parts.join('/')).not.toMatch(/(^|\/)\.|\\|\0/)
    }),
  )
})
