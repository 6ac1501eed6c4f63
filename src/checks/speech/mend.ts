/** What brings a handset part back into the speech. */
import type { Changes, Figure } from '../../figures/figure.ts'
import type { Branch } from '../../netlist/netlist.ts'
import { type CheckContext, nodeShort } from '../context.ts'
import { bestLanding, landed, landingMove } from '../wiring/landing.ts'
import { shortedBy } from './path.ts'

/** A mend in words, and the figure with it where it was tried. */
export interface Mend {
  readonly words: string
  readonly mended?: Figure
}

/**
 * The link out that shorts the part, or its cores landed elsewhere where the solver finds that it mends.
 * @param works the figure that is mended, of the speech figures with these changes; undefined where it is not
 */
export function mendPart(
  context: CheckContext,
  part: Branch,
  name: string,
  works: (figures: readonly Figure[], changes: Changes) => Figure | undefined,
): Mend {
  const shorts = shortedBy(context, part)
  if (shorts !== undefined) {
    const ends = shorts.map((id) => nodeShort(context, context.net.nodeIndex.get(id) ?? 0))
    return { words: `take out what joins the two ends of the ${name}: ${ends.join(' – ')}` }
  }
  const cores = context.place.cores.filter((core) => core.far === part.from || core.far === part.to)
  const landing = bestLanding(context, cores)
  if (landing !== undefined) {
    const changes = landing.moves.map(({ core, terminal }) => landed(core, terminal))
    const mended = works(landing.figures, {
      lifted: changes.flatMap(({ lifted = [] }) => lifted),
      added: changes.flatMap(({ added = [] }) => added),
    })
    if (mended !== undefined) return { words: landingMove(context, landing.moves), mended }
  }
  return {
    words: `see first what the checks of the wiring say; then look along the way from the line to the ${name}, part by part`,
  }
}
