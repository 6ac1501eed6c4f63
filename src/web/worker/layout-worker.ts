/**
 * The worker that places symbols is the layout library's own: it answers its own half of the talk, in
 * `src/layout/engine-behind.ts`. It does nothing else, since it takes every message for itself.
 */
import 'elkjs/lib/elk-worker.min.js'
