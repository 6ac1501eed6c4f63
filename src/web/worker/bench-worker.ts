/** The bench's worker. */
import '../no-made-code.ts'
import type { BenchTalk } from '../talk/protocol.ts'
import { serveAsks } from './serve-asks.ts'

// the answers come with the bench
serveAsks<Pick<BenchTalk, never>>({})
