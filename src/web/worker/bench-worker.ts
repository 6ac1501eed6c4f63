/** The bench's worker. */
import '../no-made-code.ts'
import type { BenchTalk } from '../talk/protocol.ts'
import { benchAnswers } from './bench-answers.ts'
import { serveAsks } from './serve-asks.ts'

serveAsks<BenchTalk>(benchAnswers())
