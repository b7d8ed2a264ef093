/** Planning the rotation, from a day that can be chosen. */
import { useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { counted } from '../../parts/Needs.tsx'
import { change } from '../../query.ts'
import { isDate } from './edits.ts'
import type { Opened, SeasonEdits } from './useSeasonEdits.ts'
import type { Told } from './useTold.ts'

/** How many sessions lie ahead, and how far the plan differs from the last. */
function plannedWords({ plan, first, changes }: OutputOf<'season.plan'>): string {
	const ahead = plan.sessions.filter((session) => !session.past)
	const bare = ahead.filter((session) => session.pair === undefined).length
	const without = bare > 0 ? `, ${bare} without a pair` : ''
	const sessions = `Planned: ${ahead.length} sessions ahead${without}.`
	if (first) return sessions
	return changes.length === 0
		? `${sessions} Nothing changed against the last plan.`
		: `${sessions} ${counted(changes.length, 'change')} against the last plan.`
}

interface PlanningOf {
	playerId: string
	opened: Opened
	edits: SeasonEdits
	told: Told
}
export function usePlanning({ playerId, opened, edits, told }: PlanningOf) {
	const [from, setFrom] = useState(opened.from)
	const [running, setRunning] = useState(false)
	const [changed, setChanged] = useState(false)
	const button = useRef<HTMLButtonElement>(null)
	const plan = async () => {
		told.clearTrouble()
		told.tell('')
		setRunning(true)
		try {
			await edits.saveAll()
			const chosen = isDate(from) && from !== opened.from ? from : undefined
			const answer = await change('season.plan', present({ playerId, from: chosen }))
			told.tell(plannedWords(answer), false)
			setChanged(!answer.first)
		} catch (error) {
			told.refuse(error)
		} finally {
			setRunning(false)
			setTimeout(() => button.current?.focus())
		}
	}
	return { from, setFrom, running, changed, button, plan }
}
/** `changed`: the last planning followed another; `button` is the one that plans. */
export type Planning = ReturnType<typeof usePlanning>
