import { slotMoves } from 'ringproof/web/views/identify/slot-moves'
import { expect, test } from 'vitest'

const slot = (fitted?: string) => ({
  name: 'regulator',
  ...(fitted === undefined ? {} : { fitted }),
})

test('a set found without its unit has it pulled', () => {
  expect(slotMoves({ unit: null }, [slot('bent')])).toEqual([{ do: 'pull unit', what: 'regulator' }])
})

test('another unit is plugged in, after the one there is pulled', () => {
  const plugged = { do: 'plug unit', what: 'clover', in: 'regulator' }
  expect(slotMoves({ unit: 'clover' }, [slot()])).toEqual([plugged])
  expect(slotMoves({ unit: 'clover' }, [slot('bent')])).toEqual([
    { do: 'pull unit', what: 'regulator' },
    plugged,
  ])
})

test('nothing is done where it is so already, or where there is no slot', () => {
  expect(slotMoves({ unit: null }, [slot()])).toEqual([])
  expect(slotMoves({ unit: 'bent' }, [slot('bent')])).toEqual([])
  expect(slotMoves({}, [slot('bent')])).toEqual([])
  expect(slotMoves({ unit: null }, [])).toEqual([])
})
