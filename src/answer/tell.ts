/** Told what is being worked on, before each piece of work, by whoever may have to wait for it. */
export type Tell = (says: string) => void

/** For those who need not know. */
export const QUIET: Tell = () => {}
