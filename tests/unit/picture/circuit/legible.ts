/** What stands where in a circuit picture, and what lies on something else. */
import type { Mark } from 'ringproof'
import { textWidth } from 'ringproof/picture/text-size'

interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
  readonly says: string
}

export function* marksIn(mark: Mark): Generator<Mark> {
  yield mark
  for (const child of mark.children) if (typeof child !== 'string') yield* marksIn(child)
}

function textBoxes(drawn: Mark): readonly Box[] {
  return [...marksIn(drawn)]
    .filter(({ tag, attributes }) => tag === 'text' && attributes.class !== 'letters')
    .map(({ attributes, children }) => {
      const says = children.join('')
      const size = Number(drawn.attributes['font-size'])
      const width = textWidth(says, size)
      const x = Number(attributes.x)
      const left = attributes['text-anchor'] === 'middle' ? x - width / 2 : x
      const y = Number(attributes.y)
      return { left, right: left + width, top: y - 0.82 * size, bottom: y + 0.23 * size, says }
    })
}

/** Straight pieces of every wire that is drawn. */
function wirePieces(drawn: Mark): readonly Box[] {
  return [...marksIn(drawn)]
    .filter(({ attributes }) => String(attributes.class).split(' ').includes('wire'))
    .flatMap(({ attributes }) => {
      const points = String(attributes.d)
        .slice(1)
        .split('L')
        .map((one) => one.split(' ').map(Number))
      return points.slice(1).map(([x = 0, y = 0], k) => {
        const [u = 0, v = 0] = points[k] ?? []
        return {
          left: Math.min(x, u),
          right: Math.max(x, u),
          top: Math.min(y, v),
          bottom: Math.max(y, v),
          says: String(attributes.d),
        }
      })
    })
}

function overlaps(p: Box, q: Box): boolean {
  return p.left < q.right && q.left < p.right && p.top < q.bottom && q.top < p.bottom
}

/** A wire is as broad as a heavy current makes it. */
const overlapsLine = (text: Box, wire: Box): boolean =>
  text.left < wire.right + 1 &&
  wire.left - 1 < text.right &&
  text.top < wire.bottom + 1 &&
  wire.top - 1 < text.bottom

/** Words that lie on other words, on a wire, or outside of the picture. */
export function collisions(drawn: Mark): readonly string[] {
  const texts = textBoxes(drawn)
  const wires = wirePieces(drawn)
  const [width, height] = [Number(drawn.attributes.width), Number(drawn.attributes.height)]
  return texts.flatMap((one, k) => [
    ...texts
      .slice(k + 1)
      .filter((other) => overlaps(one, other))
      .map(({ says }) => `${one.says} over ${says}`),
    ...wires.filter((wire) => overlapsLine(one, wire)).map(({ says }) => `${one.says} over ${says}`),
    ...(one.left < 0 || one.top < 0 || one.right > width || one.bottom > height
      ? [`${one.says} leaves`]
      : []),
  ])
}
