/** The demo: the trap that this program exists to catch, told with its own commands. Demo sheets are named here only. */
import { compare, type Shelf } from '../index.ts'
import { EXIT } from './exit-code.ts'
import type { Io } from './io.ts'
import { type Given, widthOf } from './options.ts'
import { prose } from './prose.ts'

/** Runs a command line in this process. */
export type Rerun = (argv: readonly string[]) => Promise<number>

/** Examples that the help teaches with. */
export const DEMO_EXAMPLES = {
  check: [
    'ringproof check sedge-converted',
    'ringproof check fescue --on depot-exchange',
    'ringproof check my-set.yaml --json',
  ],
  compare: [
    'ringproof compare sedge-converted',
    'ringproof compare sedge-as-found sedge',
    'ringproof compare fescue-to-two-wires --on gatehouse --in stairs',
  ],
  figures: [
    'ringproof figures fescue',
    'ringproof figures fescue ringing',
    'ringproof figures fescue --on depot-exchange --second-opinion',
  ],
  draw: [
    'ringproof draw sedge-converted > sedge.svg',
    'ringproof draw fescue --picture circuit --condition off-hook > circuit.svg',
    'ringproof draw fescue --picture curves > speech.svg',
  ],
  solve: [
    'ringproof solve fescue --condition off-hook/speech --frequency "1 kHz"',
    'ringproof solve my-circuit.yaml',
    'ringproof solve fescue --condition off-hook --second-opinion --digits 40',
  ],
  follow: [
    'ringproof follow fescue --condition off-hook',
    'ringproof follow fescue --condition on-hook/ringing --frequency "25 Hz"',
  ],
  meter: [
    'ringproof meter fescue',
    'ringproof meter fescue --between plug.a plug.b --condition off-hook --range ohms --instrument needle',
  ],
  faults: [
    'ringproof faults fescue --symptom rings=silent',
    'ringproof faults sedge --on depot-exchange --pairs',
  ],
  diagnose: [
    'ringproof diagnose sedge --symptom rings-but-no-speech --ask',
    'ringproof diagnose fescue --symptom bell-silent --observed tone=clear --reading "plug.a plug.b off-hook 450 Ω"',
    'ringproof diagnose fescue --symptom hears-nothing --no-live --json',
  ],
  spread: [
    'ringproof spread fescue',
    'ringproof spread fescue ringing --law uniform',
    'ringproof spread fescue --on valley-exchange --age 50',
  ],
  identify: ['ringproof identify --seen slot=no --reading "A3 A4 on-hook 0.2 Ω"', 'ringproof identify --ask'],
  list: ['ringproof list sets', 'ringproof list limits', 'ringproof list faults'],
  schema: ['ringproof schema set', 'ringproof schema check'],
  demo: ['ringproof demo'],
} as const

const WRONG = 'sedge-converted-as-fescue'
const RIGHT = 'sedge-converted'

const BEFORE = `A sedge came off a hard-wired line and is to work on a plug and socket with three wires. It looks
like a fescue, so somebody converts it the way a fescue is converted, and asks before a lead is moved:
`
const BETWEEN = `
In a sedge the strap B3–B4 commons two terminals that a fescue keeps apart. The same set, converted as its own
wiring asks:
`

const HOUSE = 'goods-office'
const BESIDE = `
The set rings. But will the telephones beside it? In the goods office a heavy old marram hangs on the line with four
fescues; each of the five would ring alone:
`

/** The options that go on to each command of the demo. */
function passedOn({ sheets, width, colour }: Given): string[] {
  return [
    ...(sheets ?? []).flatMap((folder) => ['--sheets', folder]),
    ...(width === undefined ? [] : ['--width', width]),
    ...(colour === false ? ['--no-colour'] : []),
  ]
}

/** Whether every wiring check of the right conversion holds. */
function wiringHolds(shelf: Shelf): boolean {
  const wiring = compare({ found: RIGHT }, shelf).proposed.verdicts.filter(({ check }) =>
    check.startsWith('wiring.'),
  )
  return wiring.length > 0 && wiring.every(({ state }) => state === 'holds')
}

/** Tells the demo. 0 when the wrong conversion and the crowded house fail and the right one's wiring holds, else 3. */
export async function tellDemo(io: Io, options: Given, shelf: Shelf, rerun: Rerun): Promise<number> {
  const width = widthOf(options.width, io.columns)
  const say = (argv: readonly string[]): Promise<number> => {
    io.out(`$ ringproof ${argv.join(' ')}\n`)
    return rerun([...argv, ...passedOn(options)])
  }
  io.out(`${prose(BEFORE, width)}\n`)
  const wrong = await say(['check', WRONG])
  io.out(`\n${prose(BETWEEN, width)}\n`)
  const right = await say(['compare', RIGHT])
  io.out(`\n${prose(BESIDE, width)}\n`)
  const house = await say(['check', HOUSE])
  const told = wrong === EXIT.fails && right === EXIT.answered && house === EXIT.fails && wiringHolds(shelf)
  return told ? EXIT.answered : EXIT.notComputed
}
