/** Light or dark: as the system wants it, or as the reader chose it here. */
import { type Signal, signal } from '@preact/signals'

export type Theme = 'system' | 'light' | 'dark'
const KEY = 'ringproof/theme'

export const theme: Signal<Theme> = signal('system')

function show(one: Theme): void {
  theme.value = one
  if (one === 'system') delete document.documentElement.dataset.theme
  else document.documentElement.dataset.theme = one
}

/** Before the first picture, so that nothing flashes. */
export function startTheme(): void {
  try {
    const kept = localStorage.getItem(KEY)
    show(kept === 'light' || kept === 'dark' ? kept : 'system')
  } catch {
    show('system')
  }
}

export function chooseTheme(one: Theme): void {
  show(one)
  try {
    localStorage.setItem(KEY, one)
  } catch {
    // chosen for as long as the page is open
  }
}
