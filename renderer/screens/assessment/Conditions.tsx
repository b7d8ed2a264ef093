/** The conditions of a visit: found by any of their names, with what is recorded of each. */
import { Box, Typography } from '@mui/material'
import { useRef, useState } from 'react'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import type { Condition } from '../../../shared/engine/visit/terms.ts'
import { capital, conditionInWords } from '../../../shared/engine/words/words.ts'
import { ConditionPicker } from './ConditionPicker.tsx'
import { ConditionRow } from './ConditionRow.tsx'
import { withoutRow } from './listRows.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

/** Nothing is guessed: how it stands, on which side and how much it hurts is said by hand. */
function withCondition(now: StepProps['draft'], condition: Condition): StepProps['draft'] {
	const more = { condition, side: 'none' } as const
	return { ...now, visit: { ...now.visit, conditions: [...(now.visit.conditions ?? []), more] } }
}
export function Conditions({ draft, change, goTo }: DraftProps & Pick<StepProps, 'goTo'>) {
	const { conditions: list = [], player, visitDate } = draft.visit
	const box = useRef<HTMLDivElement>(null)
	const [removed, setRemoved] = useState('')
	const focusOnceDrawn = (target: string) =>
		requestAnimationFrame(() => box.current?.querySelector<HTMLElement>(target)?.focus())
	const add = (condition: Condition) => {
		setRemoved('')
		change((now) => withCondition(now, condition))
		// on to what is asked of it: the side, or the first field where it has none
		focusOnceDrawn(`[data-path^="conditions.${list.length}."]`)
	}
	const remove = (index: number) => {
		const taken = list[index]
		change((now) => withoutRow(now, 'conditions', index))
		setRemoved(taken ? capital(conditionInWords(taken, 'clinician')) : '')
		// where a second press of the key takes nothing away
		focusOnceDrawn('[role=combobox][data-picker]')
	}
	return (
		<Box ref={box} sx={{ display: 'grid', gap: 1 }}>
			{list.map((entered, index) => (
				<ConditionRow
					// biome-ignore lint/suspicious/noArrayIndexKey: rows have no id in the file format
					key={index}
					{...{ entered, draft, change, goTo }}
					path={`conditions.${index}`}
					remove={() => remove(index)}
				/>
			))}
			<Typography role="status" variant="body2" sx={{ '&:empty': { display: 'none' } }}>
				{removed && `${removed} is taken out. Ctrl+Z brings it back.`}
			</Typography>
			<ConditionPicker ageYears={ageYears(player.birthDate, visitDate)} choose={add} />
		</Box>
	)
}
