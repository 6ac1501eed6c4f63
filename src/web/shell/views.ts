/** The views of the page: their words in the fragment, their titles, and where they are loaded from. */
import type { ComponentType } from 'preact'

export interface View {
  readonly id: string
  readonly title: string
  load(): Promise<ComponentType>
}

/** In the order of the page's menu. */
export const VIEWS: readonly View[] = [
  {
    id: 'bench',
    title: 'Bench',
    load: async () => (await import('../views/bench/bench-view.tsx')).BenchView,
  },
  {
    id: 'premises',
    title: 'Premises',
    load: async () => (await import('../views/premises/premises-view.tsx')).PremisesView,
  },
  {
    id: 'speech',
    title: 'Speech',
    load: async () => (await import('../views/speech/speech-view.tsx')).SpeechView,
  },
  {
    id: 'diagnosis',
    title: 'Find the fault',
    load: async () => (await import('../views/diagnosis/diagnosis-view.tsx')).DiagnosisView,
  },
  {
    id: 'identify',
    title: 'Which set is it?',
    load: async () => (await import('../views/identify/identify-view.tsx')).IdentifyView,
  },
  {
    id: 'sheet',
    title: 'Sheet',
    load: async () => (await import('../views/sheet/sheet-view.tsx')).SheetView,
  },
  {
    id: 'files',
    title: 'Files',
    load: async () => (await import('../views/files/files-view.tsx')).FilesView,
  },
  { id: 'lesson', title: 'Lesson', load: async () => (await import('../lesson/lesson-view.tsx')).LessonView },
]
