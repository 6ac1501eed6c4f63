/** The commands: what each is called, takes and asks the library. A new command is one row. */
import {
  check,
  compare,
  type DrawLaw,
  faults,
  figures,
  follow,
  LISTS,
  list,
  meter,
  solve,
  spread,
} from '../index.ts'
import { checkTwice, figuresTwice, solveTwice } from '../opinion/answers.ts'
import { benchCommand } from './bench.ts'
import { withBookMeans } from './book-means.ts'
import type { Asked, CommandRow } from './command.ts'
import { grammarOf } from './completion/grammar-of.ts'
import { completionScript, completionWords } from './completion/script.ts'
import { DEMO_EXAMPLES, tellDemo } from './demo.ts'
import { diagnoseReply } from './diagnose.ts'
import { drawReply } from './draw.ts'
import { EXIT } from './exit-code.ts'
import { identifyReply } from './identify.ts'
import { instrumentOf } from './instrument-of.ts'
import { frequencyOf, pairOf, wholeOf, yearsOf } from './options.ts'
import { watched } from './progress.ts'
import { judgedReply, replyOf } from './reply.ts'
import { schemaReply } from './schema-reply.ts'
import { opinionAsked, waited } from './second-opinion.ts'
import { fileOf, given } from './target.ts'

const EVERYWHERE = ['json', 'sheets', 'width', 'colour'] as const
/** Where it stands. */
const GROUND = ['on', 'at', 'in'] as const
const OPINION = ['secondOpinion', 'digits'] as const
const TARGET = 'a set, a rewire or premises, by its name or file'

const onOf = ({ options, io }: Asked) => ({
  ...given('on', options.on),
  ...given('onText', fileOf(options.on, io)),
  ...given('at', options.at),
  ...given('in', options.in),
})

const targetOf = (asked: Asked) => {
  const [target = ''] = asked.words
  return { target, ...given('text', fileOf(target, asked.io)), ...onOf(asked) }
}

const frequencyIn = ({ options }: Asked) => given('frequency', frequencyOf(options.frequency))

/** Conditions in which current runs where people look for it first. */
const TALKING = 'off-hook'

/** All commands, in the order of the help. */
export const COMMANDS: readonly CommandRow[] = [
  {
    name: 'check',
    summary: 'judge a set, a rewire or premises as wired: what fails, why, and what mends it',
    words: [['<target>', TARGET, 'targets']],
    options: [...GROUND, 'strict', 'whole', ...OPINION, ...EVERYWHERE],
    examples: DEMO_EXAMPLES.check,
    nearWires: true,
    run: (asked) => {
      const { io, options, shelf } = asked
      const request = { ...targetOf(asked), ...given('whole', options.whole) }
      const opinion = opinionAsked(options)
      if (opinion === undefined) {
        const answer = watched(io, (tell) => check(request, shelf, undefined, tell))
        return judgedReply(answer, options.strict)
      }
      return waited(io, opinion, (how) => checkTwice(request, shelf, how)).then((answer) =>
        judgedReply(answer, options.strict),
      )
    },
  },
  {
    name: 'figures',
    summary: 'what can be computed of a set in its place: currents, voltages, ringing, speech',
    words: [
      ['<target>', TARGET, 'targets'],
      ['[figure]', 'only figures whose id begins so: ringing, or loop.current', 'figures'],
    ],
    options: [...GROUND, ...OPINION, ...EVERYWHERE],
    examples: DEMO_EXAMPLES.figures,
    nearWires: true,
    run: (asked) => {
      const { io, options, shelf, words } = asked
      const request = { ...targetOf(asked), ...given('only', words[1]) }
      const opinion = opinionAsked(options)
      if (opinion === undefined)
        return replyOf(watched(io, (tell) => figures(request, shelf, undefined, tell)))
      return waited(io, opinion, (how) => figuresTwice(request, shelf, how)).then(replyOf)
    },
  },
  {
    name: 'compare',
    summary: 'what a rewire changes: the set as found beside the set as proposed',
    words: [
      ['<found>', 'a rewire, the set as found, or premises, by its name or file', 'sides'],
      [
        '[proposed]',
        'the set, rewire or premises as proposed; left out where a rewire stands first',
        'sides',
      ],
    ],
    options: [...GROUND, 'strict', ...EVERYWHERE],
    examples: DEMO_EXAMPLES.compare,
    nearWires: true,
    run: (asked) => {
      const [found = '', proposed] = asked.words
      const request = {
        found,
        ...given('foundText', fileOf(found, asked.io)),
        ...given('proposed', proposed),
        ...given('proposedText', fileOf(proposed, asked.io)),
        ...onOf(asked),
      }
      const answer = watched(asked.io, (tell) => compare(request, asked.shelf, tell))
      return judgedReply(answer, asked.options.strict)
    },
  },
  {
    name: 'solve',
    summary: 'voltages and currents of a set or a circuit in one condition',
    words: [['<target>', `a circuit, ${TARGET}`, 'solvable']],
    options: ['condition', 'frequency', ...GROUND, ...OPINION, ...EVERYWHERE],
    examples: DEMO_EXAMPLES.solve,
    nearWires: true,
    run: (asked) => {
      const request = {
        ...targetOf(asked),
        ...frequencyIn(asked),
        ...given('condition', asked.options.condition),
      }
      const opinion = opinionAsked(asked.options)
      if (opinion === undefined) return replyOf(solve(request, asked.shelf))
      return waited(asked.io, opinion, (how) => solveTwice(request, asked.shelf, how)).then(replyOf)
    },
  },
  {
    name: 'follow',
    summary: 'follow the current from terminal to terminal, each step with its line in the sheet',
    words: [['<target>', TARGET, 'targets']],
    options: ['condition', 'frequency', 'from', 'to', ...GROUND, ...EVERYWHERE],
    examples: DEMO_EXAMPLES.follow,
    nearWires: true,
    run: (asked) => {
      const { condition = TALKING, from, to } = asked.options
      const ends = { ...given('from', from), ...given('to', to) }
      return replyOf(follow({ ...targetOf(asked), ...frequencyIn(asked), condition, ...ends }, asked.shelf))
    },
  },
  {
    name: 'meter',
    summary: 'what a meter shows: the whole table of a set, or one reading between two points',
    words: [['<target>', TARGET, 'targets']],
    options: ['between', 'condition', 'range', 'instrument', ...GROUND, 'short', ...EVERYWHERE],
    examples: DEMO_EXAMPLES.meter,
    nearWires: true,
    run: (asked) => {
      const { condition, range, instrument } = asked.options
      const request = {
        ...targetOf(asked),
        ...given('between', pairOf(asked.options.between)),
        ...given('condition', condition),
        ...given('range', range),
        ...instrumentOf(instrument, asked.io),
        ...given('short', asked.options.short),
      }
      return replyOf(watched(asked.io, (tell) => meter(request, asked.shelf, tell)))
    },
  },
  {
    name: 'faults',
    summary: 'the fault book of a set: what a person notices of each fault, and which reading tells it',
    words: [['<target>', TARGET, 'targets']],
    options: ['symptom', 'pairs', 'whole', 'instrument', ...GROUND, 'cache', ...EVERYWHERE],
    examples: DEMO_EXAMPLES.faults,
    nearWires: true,
    run: async (asked) => {
      const { instrument, pairs, symptom, whole } = asked.options
      const request = {
        ...targetOf(asked),
        ...given('symptoms', symptom),
        ...given('pairs', pairs),
        ...given('whole', whole),
        ...instrumentOf(instrument, asked.io),
      }
      return replyOf(await withBookMeans(asked, (means) => faults(request, asked.shelf, means)))
    },
  },
  {
    name: 'diagnose',
    summary: 'why does it not work? causes ranked by what was found out, and what to find out next',
    words: [['<target>', TARGET, 'targets']],
    options: [
      ...(['symptom', 'observed', 'reading', 'ask', 'outside', 'live', 'pairs', 'instrument'] as const),
      ...GROUND,
      'cache',
      ...EVERYWHERE,
    ],
    examples: DEMO_EXAMPLES.diagnose,
    nearWires: true,
    run: diagnoseReply,
  },
  {
    name: 'spread',
    summary: 'every figure and verdict with its parts within their tolerances, and with the years',
    words: [
      ['<target>', TARGET, 'targets'],
      ['[figure]', 'only figures whose id begins so: ringing, or loop.current', 'figures'],
    ],
    options: [...GROUND, 'age', 'draws', 'seed', 'law', ...EVERYWHERE],
    examples: DEMO_EXAMPLES.spread,
    nearWires: true,
    run: (asked) => {
      const { age, draws, law, seed } = asked.options
      const request = {
        ...targetOf(asked),
        ...given('only', asked.words[1]),
        ...given('draws', wholeOf(draws, 'draws')),
        ...given('seed', wholeOf(seed, 'seed')),
        ...given('law', law as DrawLaw | undefined),
        ...given('age', yearsOf(age)),
      }
      return replyOf(watched(asked.io, (tell) => spread(request, asked.shelf, tell)))
    },
  },
  {
    name: 'draw',
    summary: 'a picture as SVG: the terminals with what lies on them, the circuit, or speech by frequency',
    words: [['<target>', `a circuit, ${TARGET}`, 'solvable']],
    options: ['picture', 'condition', 'frequency', 'found', ...GROUND, ...EVERYWHERE],
    examples: DEMO_EXAMPLES.draw,
    nearWires: true,
    run: drawReply,
  },
  {
    name: 'identify',
    summary: 'which known set lies on the bench: by what can be seen, and by readings with its cords off',
    words: [],
    options: ['reading', 'seen', 'ask', 'rewires', 'instrument', ...EVERYWHERE],
    examples: DEMO_EXAMPLES.identify,
    nearWires: true,
    run: identifyReply,
  },
  {
    name: 'bench',
    summary: 'opens the bench: a page in your browser to move leads on, from this machine alone',
    words: [['[folder]', 'sheets of your own to see and to save to; the demo fleet alone without it']],
    options: ['port', 'write', 'width', 'colour'],
    examples: [
      'ringproof bench',
      'ringproof bench my-sheets --port 8642',
      'ringproof bench --write my-folder',
    ],
    nearWires: true,
    run: benchCommand,
  },
  {
    name: 'list',
    summary:
      'what there is: sets, lines, premises, rewires, circuits, checks, faults, limits, figures, parts …',
    words: [['<what>', LISTS.join(' '), 'lists']],
    options: EVERYWHERE,
    examples: DEMO_EXAMPLES.list,
    run: ({ words, shelf }) => replyOf(list({ what: words[0] ?? '' }, shelf)),
  },
  {
    name: 'schema',
    summary: 'the JSON Schema of a kind of sheet, or of an answer as --json prints it',
    words: [['<what>', 'a kind of sheet (set, line …) or an answer (check, solve …)', 'schemas']],
    options: EVERYWHERE,
    examples: DEMO_EXAMPLES.schema,
    run: ({ words }) => schemaReply(words[0] ?? ''),
  },
  {
    name: 'demo',
    summary: 'a conversion that fails, and the one that is right',
    words: [],
    options: ['sheets', 'width', 'colour'],
    examples: DEMO_EXAMPLES.demo,
    run: ({ io, options, rerun, shelf }) => tellDemo(io, options, shelf, rerun),
  },
  {
    name: 'completion',
    summary: 'a script with which a shell completes commands, options and names',
    words: [['<shell>', 'bash, zsh or fish', 'shells']],
    options: ['width', 'colour'],
    examples: ['source <(ringproof completion bash)', 'ringproof completion fish | source'],
    run: ({ io, words }) => {
      io.out(completionScript(words[0] ?? '', grammarOf(COMMANDS)))
      return Promise.resolve(EXIT.answered)
    },
  },
  {
    name: 'complete',
    summary: 'the words of a list, one a line; for the scripts of `ringproof completion`',
    words: [['<list>', 'targets, grounds, conditions …']],
    options: ['sheets'],
    examples: [],
    hidden: true,
    run: ({ io, shelf, words }) => {
      io.out(completionWords(words[0] ?? '', shelf))
      return Promise.resolve(EXIT.answered)
    },
  },
]
