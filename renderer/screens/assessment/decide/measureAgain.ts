/** The field of a measure that would make a proposal surer: its step, and the way into it. */
import { flushSync } from 'react-dom'
import type { Firm } from '../../../../shared/engine/firmness/firmness.ts'
import { asksOf, steps } from '../steps.ts'

/** A measure with its step. */
export interface MeasureAgain {
	path: string
	step: string
}
/** A repeat of a measure is typed into the field of the measure. */
const fieldOf = (path: string): string => path.replace(/\.\d+$/, '')
/** The first measure that decides; undefined where the proposal is steady or none has a field. */
export function measureAgain(firm: Firm | undefined): MeasureAgain | undefined {
	for (const decides of firm?.decidedBy ?? []) {
		const path = fieldOf(decides)
		const step = steps.find((one) => asksOf(one).includes(path))
		if (step) return { path, step: step.name }
	}
	return undefined
}
/**
 * Goes into the field, behind the readings that stand there: one more is added, none is replaced.
 */
export function goToMeasure({ path, step }: MeasureAgain, goTo: (step: string) => void): void {
	flushSync(() => goTo(step))
	const field = document.querySelector<HTMLElement>(`[data-path="${CSS.escape(path)}"]`)
	field?.focus()
	if (!(field instanceof HTMLInputElement) || field.value === '') return
	field.setSelectionRange(field.value.length, field.value.length)
	// as typed by hand, so that it is taken back with what follows
	document.execCommand('insertText', false, ' ')
}
