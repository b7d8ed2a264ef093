/** Planning the rotation, from a day that can be chosen. */
import { useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { counted } from '../../parts/Needs.tsx'
import { change } from '../../query.ts'
import { isDate } from './edits.ts'
import type { Opened, SeasonEdits } from './useSeasonEdits.ts'
import type { Told } from './useTold.ts'

export type Tried = OutputOf<'season.plan'>
/** How many sessions lie ahead, and how far the plan differs from the last. */
function plannedWords({ plan, first, changes }: Tried): string {
	const ahead = plan.sessions.filter((session) => !session.past)
	const bare = ahead.filter((session) => session.pair === undefined).length
	const without = bare > 0 ? `, ${bare} without a pair` : ''
	const sessions = `Planned: ${ahead.length} sessions ahead${without}.`
	if (first) return sessions
	return changes.length === 0
		? `${sessions} Nothing changed against the last plan.`
		: `${sessions} ${counted(changes.length, 'change')} to look at: take the plan or leave it.`
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
	const [tried, setTried] = useState<Tried>()
	const button = useRef<HTMLButtonElement>(null)
	const plan = async () => {
		told.clearTrouble()
		told.tell('')
		setRunning(true)
		setTried(undefined)
		let waits = false
		try {
			await edits.saveAll()
			const chosen = isDate(from) && from !== opened.from ? from : undefined
			const answer = await change('season.plan', present({ playerId, from: chosen, ask: true }))
			told.tell(plannedWords(answer), false)
			waits = !answer.kept
			setTried(waits ? answer : undefined)
		} catch (error) {
			told.refuse(error)
		} finally {
			setRunning(false)
			// what becomes different is read first
			if (!waits) setTimeout(() => button.current?.focus())
		}
	}
	/** What was tried is no longer asked about. */
	const settle = async (call: 'season.take' | 'season.leave', says: string) => {
		told.clearTrouble()
		try {
			await change(call, { playerId })
			told.tell(says, false)
		} catch (error) {
			told.refuse(error)
		} finally {
			setTried(undefined)
			setTimeout(() => button.current?.focus())
		}
	}
	const take = () => settle('season.take', 'The plan was taken.')
	const leave = () => settle('season.leave', 'The plan was left: the one before stands.')
	return { from, setFrom, running, tried, take, leave, button, plan }
}
/** `tried`: a plan that waits to be taken or left; `button` is the one that plans. */
export type Planning = ReturnType<typeof usePlanning>
