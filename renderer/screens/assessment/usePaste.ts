/** A block of cells pasted over the fields of a step: shown first, then taken in. */
import { useCallback, useMemo, useState } from 'react'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { visitSchema } from '../../../shared/engine/visit/visit.ts'
import { undone } from '../../parts/MeasureField.tsx'
import type { Pasting } from '../../parts/PasteDialog.tsx'
import { applyPaste, planBlock } from '../../parts/pasteBlock.ts'
import type { StepProps } from './stepProps.ts'
import type { Step } from './steps.ts'

/** A note is no cell of a table. */
const isNote = (path: string): boolean => fieldMeta(visitSchema, path).note

export function usePaste(step: Step, change: StepProps['change']) {
	const [block, setBlock] = useState<{ text: string; at: string }>()
	const rows = useMemo(
		() =>
			step.groups.flatMap((group) =>
				group.fields
					.map((row): readonly string[] => row.paths)
					.filter(([first = '']) => !isNote(first)),
			),
		[step],
	)
	/** @returns false where the field at `path` is none of this step: the paste is then its own */
	const takeBlock = useCallback(
		(path: string, text: string): boolean => {
			if (!rows.some((paths) => paths.includes(path))) return false
			setBlock({ text, at: path })
			return true
		},
		[rows],
	)
	const close = () => setBlock(undefined)
	return { takeBlock, pasting: block && pastingOf(block) }

	function pastingOf({ text, at }: { text: string; at: string }): Pasting {
		const plan = planBlock(text, rows, at)
		const take = () => {
			change((now) => applyPaste(now, plan.cells))
			dispatchEvent(new Event(undone))
			close()
		}
		const moveTo = (path: string) => setBlock({ text, at: path })
		return { plan, at, fields: rows.flat(), moveTo, take, close }
	}
}
