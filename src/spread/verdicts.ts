/**
 * What becomes of a verdict with every value somewhere within its limits. The check itself is asked again with other
 * values, so that what it compares and with which limit is said in one place.
 */
import { judge } from '../checks/judge.ts'
import type { Verdict, VerdictLimit, VerdictState } from '../checks/rule.ts'
import type { Figure } from '../figures/figure.ts'
import type { Supplier } from '../figures/read.ts'
import type { Condition } from '../netlist/condition.ts'
import type { Netlist } from '../netlist/netlist.ts'
import { askedAgain, type Judged } from './judged.ts'
import type { Spots } from './sensitivity.ts'
import { type Drawn, type PartShare, partsOf, pullsOf, type Studied } from './study.ts'
import type { World } from './world.ts'

/** One verdict under tolerance. */
export interface VerdictSpread {
  readonly check: string
  readonly subject: string
  readonly condition: Condition
  /** With every value as stated. */
  readonly stated: VerdictState
  /**
   * `holds`: within the limit in the worst case too; `marginal`: within it as stated, beyond it in the worst case;
   * `fails`: beyond it as stated. As stated where no value with a tolerance moves it.
   */
  readonly state: VerdictState
  readonly figure: Figure
  readonly limit: VerdictLimit
  /** Figure and limit at the worst corner, and the figure's name where the check rests on another one there. */
  readonly worst: WorstVerdict | null
  /** Share of the drawn sets in which it fails; null where more than the figure decides it. */
  readonly fails: number | null
  /** The part that decides most, with its share in the variance of the distance to the limit. */
  readonly decides?: PartShare
}

/** What a check compares at the worst corner. */
export interface WorstVerdict {
  readonly value: number | null
  readonly limit: number | null
  /** The figure on which it rests there, where that is not the one as stated. */
  readonly rests?: Pick<Figure, 'id' | 'subject' | 'unit'>
}

/** A verdict whose limit moves with the values too: of such ones the distance is what spreads. */
interface Moving {
  /** Slopes of the margin by the logarithm of each value. */
  readonly slopes: Float64Array
  /** Draws that fail, filled while sets are drawn. */
  readonly failed: number[]
}

/** Step of the differences of margins, relative. */
const STEP = 1e-3
/** A limit that changes by less than this share stays. */
const STAYS = 1e-9

/** A verdict that is followed through the draws. */
export class Followed {
  readonly judged: Judged
  readonly #spots: Spots
  readonly #world: World
  readonly #studied: Studied
  readonly #moving: Moving | undefined
  /** No draw could make it fail. */
  readonly #isSure: boolean

  /** @param studied its figure */
  constructor(spots: Spots, judged: Judged, studied: Studied) {
    this.judged = judged
    this.#spots = spots
    this.#world = spots.world
    this.#studied = studied
    this.#moving = this.#limitMoves() ? { slopes: this.#marginSlopes(), failed: [] } : undefined
    this.#isSure = isWithin(judged.verdict) && this.#holdsFarBeyond()
  }

  /** Whether its figure has to be read in every draw. */
  get hangsOnDraws(): boolean {
    return !this.#isSure && this.#moving === undefined
  }

  /** Asks the check of a drawn set, where its limit moves; what is solved there already is not solved again. */
  drawn(n: number, net: Netlist, supplier: Supplier): void {
    if (this.#moving === undefined || this.#isSure) return
    if (askedAgain(this.judged, net, supplier)?.state === 'fails') this.#moving.failed.push(n)
  }

  /** What became of it. @param amounts its figure in every draw */
  spread(amounts: Float64Array, drawn: Drawn): VerdictSpread {
    const { verdict } = this.judged
    const corner = this.#corner()
    const moves = corner.some((factor) => factor !== 1)
    const there = moves ? this.#asked(corner) : verdict
    // the corner may be the wrong one: what fails where every figure is looked at is worse
    const again = isWithin(there) ? (this.#failingProbe() ?? there) : there
    const failed = this.#isSure ? [] : (this.#moving?.failed ?? failing(this.judged, amounts))
    // a draw within all limits that fails shows that the corner was not the worst
    const beyond = !isWithin(again) || failed?.some((n) => drawn.within[n] === 1) === true
    const slopes = this.#moving?.slopes ?? this.#studied.slopes?.slopes ?? new Float64Array(0)
    const size = this.#moving === undefined ? verdict.limit.value : 1
    const [decides] = partsOf(pullsOf(this.#world.loose, slopes, drawn.law, size))
    return {
      check: verdict.check,
      subject: verdict.subject,
      condition: verdict.condition,
      stated: verdict.state,
      state: !isWithin(verdict) || (!moves && !beyond) ? verdict.state : beyond ? 'marginal' : 'holds',
      figure: verdict.figure,
      limit: verdict.limit,
      worst: again === undefined ? null : worstOf(again, verdict.figure),
      fails: failed === undefined ? null : failed.length / drawn.factors.length,
      ...(decides === undefined ? {} : { decides }),
    }
  }

  #failingProbe(): Verdict | undefined {
    return this.#spots.probes.map((factors) => this.#asked(factors)).find((one) => one?.state === 'fails')
  }

  /** Every value at the end that is worse for the verdict. */
  #corner(): Float64Array {
    const { worst } = this.#studied
    const { loose } = this.#world
    if (this.#moving !== undefined) {
      const { slopes } = this.#moving
      return Float64Array.from(loose, ({ least, most }, k) => {
        const slope = slopes[k] ?? 0
        return slope === 0 ? 1 : slope > 0 ? least : most
      })
    }
    const { side } = this.judged.verdict.limit
    return (side === 'at-most' ? worst?.most : worst?.least)?.factors ?? this.#ones()
  }

  /** Whether it holds with every value twice as far off as its limit at the worst corner, where no draw ever comes. */
  #holdsFarBeyond(): boolean {
    if (this.#studied.worst?.steady !== true) return false
    const { loose } = this.#world
    const far = this.#corner().map((factor, k) =>
      loose[k]?.byRatio === true ? factor ** 2 : Math.max(1 + 2 * (factor - 1), factor ** 2),
    )
    return isWithin(this.#asked(far))
  }

  #ones(): Float64Array {
    return new Float64Array(this.#world.loose.length).fill(1)
  }

  #at(k: number, factor: number): Verdict | undefined {
    const factors = this.#ones()
    factors[k] = factor
    return this.#asked(factors)
  }

  /** The check asked with other values, where figures of this corner may be known already. */
  #asked(factors: Float64Array): Verdict | undefined {
    const { net, supplier } = this.#spots.at(factors)
    return askedAgain(this.judged, net, supplier)
  }

  /** Whether its limit is another at a corner of its figure, or with a value on which limits alone rest. */
  #limitMoves(): boolean {
    const { loose, net } = this.#world
    const { worst } = this.#studied
    const moves = (verdict: Verdict | undefined): boolean =>
      differs(verdict?.limit, this.judged.verdict.limit)
    const corners = [worst?.least, worst?.most].flatMap((corner) =>
      corner === undefined ? [] : [corner.factors],
    )
    if (corners.some((factors) => moves(this.#asked(factors)))) return true
    return loose.some(({ site, most }, k) => {
      const part = 'part' in site ? net.parts[site.part] : undefined
      return part?.law.sounds !== undefined && moves(this.#at(k, most))
    })
  }

  #marginSlopes(): Float64Array {
    return Float64Array.from(this.#world.loose, (_, k) => {
      const [down, up] = [1 - STEP, 1 + STEP].map((factor) => this.#at(k, factor)?.margin ?? Number.NaN)
      const slope = ((up ?? Number.NaN) - (down ?? Number.NaN)) / (2 * STEP)
      return Math.abs(slope) > STAYS ? slope : 0
    })
  }
}

function differs(limit: VerdictLimit | null | undefined, stated: VerdictLimit): boolean {
  return limit != null && Math.abs(limit.value - stated.value) > STAYS * Math.abs(stated.value)
}

/** What is compared at the worst corner; a check may rest on another figure there. */
function worstOf({ figure, limit }: Verdict, stated: Figure): VerdictSpread['worst'] {
  if (figure === null) return null
  const { id, subject, unit, value } = figure
  const isSame = id === stated.id && subject === stated.subject
  return { value, limit: limit?.value ?? null, ...(isSame ? {} : { rests: { id, subject, unit } }) }
}

function isWithin(verdict: Verdict | undefined): boolean {
  return verdict?.state === 'holds' || verdict?.state === 'marginal'
}

/** Whether a figure of this amount fails. */
function failsAt({ verdict }: Judged, amount: number): boolean {
  const { value: _, state: __, ...head } = verdict.figure
  const drawn: Figure = Number.isNaN(amount)
    ? { ...head, value: null, state: 'no-convergence' }
    : { ...head, value: amount }
  const evidence = { check: '', subject: '', path: [], says: { good: '', bad: '' }, mend: '' }
  return judge({ ...evidence, figure: drawn, limit: verdict.limit }).state === 'fails'
}

/** The draws that fail; undefined where the check asks more than whether its figure is within its limit. */
function failing(judged: Judged, amounts: Float64Array): readonly number[] | undefined {
  const { figure, state } = judged.verdict
  if (failsAt(judged, figure.value ?? Number.NaN) !== (state === 'fails') || state === 'unknown')
    return undefined
  return Array.from(amounts, (amount, n) => (failsAt(judged, amount) ? n : -1)).filter((n) => n >= 0)
}
