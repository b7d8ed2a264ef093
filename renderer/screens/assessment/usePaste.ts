/** A block of cells pasted over the fields of a step: shown first, then taken in. */
import { useCallback, useState } from 'react'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { undone } from '../../parts/MeasureField.tsx'
import { applyPaste, type PasteCell, planPaste } from '../../parts/pasteBlock.ts'
import type { StepProps } from './stepProps.ts'
import type { Step } from './steps.ts'

/** A note is no cell of a table. */
const isNote = (path: string): boolean => fieldMeta(visitSchema, path).note

export function usePaste(step: Step, change: StepProps['change']) {
	const [cells, setCells] = useState<readonly PasteCell[]>()
	/** @returns false where the field at `path` is none of this step: the paste is then its own */
	const takeBlock = useCallback(
		(path: string, text: string): boolean => {
			const rows = step.groups.flatMap((group) =>
				group.fields.map((row) => row.paths).filter(([first]) => !isNote(first)),
			)
			if (!rows.some((paths) => (paths as readonly string[]).includes(path))) return false
			setCells(planPaste(text, rows, path))
			return true
		},
		[step],
	)
	const close = () => setCells(undefined)
	const take = () => {
		if (cells) change((now) => applyPaste(now, cells))
		dispatchEvent(new Event(undone))
		close()
	}
	return { cells, takeBlock, close, take }
}
