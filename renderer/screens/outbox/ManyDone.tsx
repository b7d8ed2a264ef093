/** What came of one step over several items: how many it was done with, and why not with the others. */
import { Alert, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import type { ManyAct } from '../../../shared/desk/outbox/many.ts'
import { Outcome } from '../../parts/form.tsx'
import { change, type HostAction, useHostAction } from '../../query.ts'

type Lines = OutputOf<'outbox.many'>['lines']
const doneWords: Record<ManyAct, string> = {
	release: 'released',
	back: 'called back',
	close: 'closed',
}
export interface Many {
	action: HostAction
	lines: Lines
	run: (act: ManyAct, items: readonly OutboxView[], note: string, after?: () => void) => void
}
export function useMany(): Many {
	const [lines, setLines] = useState<Lines>([])
	const action = useHostAction()
	return {
		action,
		lines,
		run: (act, items, note, after) =>
			action.run(async () => {
				const itemIds = items.map(({ itemId }) => itemId)
				const answer = await change('outbox.many', { act, itemIds, note })
				setLines(answer.lines)
				after?.()
				const done = answer.lines.filter((line) => line.done).length
				return `${done} of ${answer.lines.length} ${doneWords[act]}.`
			}),
	}
}

interface ManyDoneProps {
	of: Many
	items: readonly OutboxView[]
}
export function ManyDone({ of: { action, lines }, items }: ManyDoneProps) {
	const left = lines.filter(({ done }) => !done)
	const whose = (itemId: string): string => {
		const item = items.find((listed) => listed.itemId === itemId)
		return item ? `, ${item.playerName}, to ${item.recipient.name}` : ''
	}
	return (
		<>
			<Outcome of={action} />
			{left.length > 0 && (
				<Alert severity="warning">
					{left.map(({ itemId, number, says }) => (
						<Typography key={itemId}>
							{number}
							{whose(itemId)}: {says}
						</Typography>
					))}
				</Alert>
			)}
		</>
	)
}
