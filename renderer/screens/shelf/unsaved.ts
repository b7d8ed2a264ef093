/** Entries of the form that are not saved yet. */
import type { ModelTexts } from './modelTexts.ts'

/**
 * What is typed and not yet saved, by the page it was typed on: going elsewhere and coming back
 * loses nothing.
 */
export const unsaved = new Map<string, ModelTexts>()
