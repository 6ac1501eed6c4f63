/** `draw`: a picture as the text of an SVG file. */
import {
  type DrawAnswer,
  draw,
  drawBoard,
  drawCircuit,
  drawCurves,
  type PictureName,
  standalone,
  toJson,
} from '../index.ts'
import type { Asked } from './command.ts'
import { EXIT } from './exit-code.ts'
import { frequencyOf } from './options.ts'
import type { Reply } from './reply.ts'
import { fileOf, given } from './target.ts'

/** The picture that is asked for, as SVG or as the data behind it. @throws ProblemError */
export async function drawReply({ io, options, shelf, words }: Asked): Promise<Reply> {
  const [target = ''] = words
  const answer = draw(
    {
      target,
      ...given('text', fileOf(target, io)),
      ...given('on', options.on),
      ...given('onText', fileOf(options.on, io)),
      ...given('at', options.at),
      ...given('in', options.in),
      picture: (options.picture ?? 'terminals') as PictureName,
      ...given('condition', options.condition),
      ...given('frequency', frequencyOf(options.frequency)),
      ...given('found', options.found),
    },
    shelf,
  )
  const picture = options.json ? '' : await pictureText(answer)
  return {
    text: () => picture,
    json: () => toJson(answer),
    code: EXIT.answered,
    problems: answer.problems,
  }
}

async function pictureText({ board, shown, figures = [], found, place }: DrawAnswer): Promise<string> {
  if (board !== undefined) return standalone(drawBoard(board, given('carries', shown?.carries)))
  if (shown === undefined) {
    return standalone(
      drawCurves(figures, { ...given('found', found), title: `Speech of ${place} by frequency` }),
    )
  }
  // the layout library is large, and other commands do not need it
  const { placeCircuit } = await import('../layout/place-circuit.ts')
  return standalone(drawCircuit(shown.circuit, await placeCircuit(shown.circuit)))
}
