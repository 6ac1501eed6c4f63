import { fileURLToPath } from 'node:url'
import { check, figureText } from 'ringproof'
import { folderShelf } from 'ringproof/host/shelf'
import { bellRows, countsText, lineRows, socketTree, verdictGroups } from 'ringproof/web/views/premises/rows'
import { describe, expect, test } from 'vitest'

const shelf = folderShelf([], fileURLToPath(new URL('../../../../netlists', import.meta.url)))
const answer = check({ target: 'station-house' }, shelf)
const { stands } = answer
if (stands === undefined) throw new Error('premises stand nowhere')

describe('premises as rows', () => {
  test('sockets hang on what feeds them, with their sets', () => {
    const { roots, loose } = socketTree(stands)
    expect(loose).toEqual([])
    expect(roots.map(({ socket }) => socket.socket)).toEqual(['front'])
    const [front] = roots
    expect(front?.sets.map(({ place }) => place)).toEqual(['office'])
    expect(front?.feeds.map(({ socket }) => socket.socket)).toEqual(['hall', 'platform'])
    expect(front?.feeds[0]?.feeds.map(({ socket }) => socket.socket)).toEqual(['porch', 'booking'])
  })

  test('a bell has a row with what it gets and needs, to one scale', () => {
    const rows = bellRows(answer, stands)
    expect(rows.map(({ place }) => place)).toEqual(stands.sets.map(({ place }) => place))
    expect(Math.max(...rows.map(({ length }) => length))).toBeCloseTo(1, 12)
    for (const row of rows) {
      const figure = answer.figures.find(
        ({ id, subject }) => id === 'ringing.current' && subject === row.bell,
      )
      if (figure === undefined) throw new Error(`no ringing current of ${row.bell}`)
      expect(row.gets).toBe(figureText(figure))
      expect(row.says).toBe('rings')
      // the mark is where the need lies on the scale of the bar
      expect(row.length > (row.mark ?? Number.NaN)).toBe(true)
    }
  })

  test('the line has a row for each check, the one that fails beyond its mark', () => {
    const rows = lineRows(answer, stands)
    const load = rows.find(({ check: name }) => name === 'line.ringing-load')
    expect(load?.verdict.state).toBe('fails')
    expect((load?.length ?? 0) > (load?.mark ?? 1)).toBe(true)
    expect(new Set(rows.map(({ check: name }) => name)).size).toBe(rows.length)
  })

  test('every verdict stands in one group', () => {
    const groups = verdictGroups(answer, stands)
    expect(groups.flatMap(({ verdicts }) => verdicts).length).toBe(answer.verdicts.length)
    expect(groups.map(({ place }) => place)).toEqual([undefined, ...stands.sets.map(({ place }) => place)])
    expect(countsText(answer.verdicts)).toBe(
      `${answer.counts.fails} fail, ${answer.counts.unknown} unknown, ${answer.counts.holds} hold`,
    )
  })
})
