/** How large a picture is shown: by hand, 12 px of letters where the page's are 16 px. */
import { readableWidth, shownWidth } from 'ringproof/web/views/bench/pictures/picture-size'
import { expect, test } from 'vitest'

// letters of 11 units become 12 px
const CIRCUIT = { width: 2200, letters: 11, page: 16 }

test('a picture wider than its frame is as wide as its letters need, and scrolls', () => {
  expect(shownWidth({ ...CIRCUIT, room: 700 }, 0)).toBe(2400)
})

test('letters grow with those of the page', () => {
  expect(readableWidth({ ...CIRCUIT, page: 32, room: 700 })).toBe(4800)
})

test('a picture that fits fills its frame, but is not blown up', () => {
  expect(shownWidth({ ...CIRCUIT, room: 2700 }, 0)).toBe(2700)
  expect(shownWidth({ ...CIRCUIT, room: 9000 }, 0)).toBe(3120)
})

test('whole is as wide as the frame; steps go by a quarter', () => {
  expect(shownWidth({ ...CIRCUIT, room: 700 }, 'whole')).toBe(700)
  expect(shownWidth({ ...CIRCUIT, room: 700 }, 1)).toBe(3000)
  expect(shownWidth({ ...CIRCUIT, room: 700 }, -1)).toBe(1920)
})
