import { readFileSync } from 'node:fs'
import { PICTURE_RULES } from 'ringproof/picture/look'
import { expect, test } from 'vitest'

test('pictures look the same on the page and as files', () => {
  const css = readFileSync(new URL('../../../src/web/look/pictures.css', import.meta.url), 'utf8')
  expect(css.slice(css.indexOf('*/') + 3)).toBe(PICTURE_RULES)
})
