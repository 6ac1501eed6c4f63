/** The worker that places symbols; the layout library comes with it and with nothing else. */
import { placeCircuit } from '../../layout/place-circuit.ts'
import type { LayoutTalk } from '../talk/protocol.ts'
import { serveAsks } from './serve-asks.ts'

serveAsks<LayoutTalk>({ place: ({ circuit }) => placeCircuit(circuit) })
