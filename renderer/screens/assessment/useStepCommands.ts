/** The steps, and the preview on Decide, as commands of the palette. */
import { useMemo } from 'react'
import { type Command, useCommands } from '../../parts/commands.ts'
import { togglePreview } from './preview.ts'
import { numberOf, type Step } from './steps.ts'

const previewCommand: Command = {
	name: 'Preview of the report, beside Decide',
	keys: 'Alt+P',
	single: '',
	run: togglePreview,
}
/** @param steps those that can be gone to; none once the record is signed */
export function useStepCommands(
	steps: readonly Step[],
	step: Step,
	goTo: (name: string) => void,
): void {
	const onDecide = step.name === 'Decide'
	const commands = useMemo((): Command[] => {
		const walk = steps.map(({ name }) => ({
			name: `Step: ${name}`,
			keys: `Alt+${numberOf(name)}`,
			single: String(numberOf(name)),
			run: () => goTo(name),
		}))
		return onDecide && walk.length > 0 ? [...walk, previewCommand] : walk
	}, [steps, onDecide, goTo])
	useCommands(commands)
}
