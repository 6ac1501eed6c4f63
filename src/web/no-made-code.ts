/** First import of every worker: zod shall make no code at run time, which the page's policy forbids. */
import { config } from 'zod/mini'

config({ jitless: true })
