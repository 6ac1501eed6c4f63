/** The worker of the long questions. */
import '../no-made-code.ts'
import type { StudyTalk } from '../talk/protocol.ts'
import { serveAsks } from './serve-asks.ts'
import { studyAnswers } from './study-answers.ts'

serveAsks<StudyTalk>(studyAnswers())
