/**
 * The roster typed, what the host read of it, and what was said of it. Rows that cannot stand stay
 * here, also after the others were taken in, until they are repaired or left out.
 */
import { useState } from 'react'
import { navigate } from 'wouter/use-hash-location'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { RosterAnswers } from '../../../shared/desk/squad/roster-answers.ts'
import type { Column } from '../../../shared/desk/squad/roster-columns.table.ts'
import type { RosterPeople } from '../../../shared/desk/squad/roster-sharing.ts'
import { call } from '../../host.ts'
import { today } from '../../parts/dates.ts'
import { counted } from '../../parts/Needs.tsx'
import { change, useHostAction } from '../../query.ts'

export type Preview = OutputOf<'squad.previewRoster'>
/** By row of the roster: the id of the player who it is, 'new', or 'leave-out'. */
type Same = Record<string, string>
/** A day that stands, to which players are added. */
export interface Standing {
	squadId: string
	team: string
	day: string
}
interface Said {
	answers: RosterAnswers
	same: Same
	/** whom consents are for */
	people: RosterPeople
}
const nothing: Said = { answers: {}, same: {}, people: {} }
/** The answers once rows were taken in: those, and who stood there twice, are done with. */
function withoutDone({ answers, same }: Said, taken: readonly number[]): RosterAnswers {
	const leftOut = Object.keys(same).filter((row) => same[row] === 'leave-out')
	return { ...answers, leaveOut: [...(answers.leaveOut ?? []), ...taken, ...leftOut.map(Number)] }
}
/** Where a list leads to once all of it is taken in. */
const placeOf = (squadId: string | undefined): string =>
	squadId === undefined ? '/players' : `/squad/${squadId}`
/** @returns the day, where it is taken in for one, and what came of each row */
async function takeIn(
	purpose: Purpose,
	input: InputOf<'squad.create'>,
): Promise<OutputOf<'squad.importPlayers'> & { squadId?: string }> {
	if (purpose === 'day') return change('squad.create', input)
	return change('squad.importPlayers', input)
}
/** What was said of a list, and the ways to say more of it. */
function useSaid(read: (answers: RosterAnswers) => void) {
	const [said, setSaid] = useState(nothing)
	const { answers } = said
	/** What is said of the list makes it read otherwise: it is read again. */
	const say = (more: RosterAnswers) => {
		const now = { ...answers, ...more }
		setSaid((before) => ({ ...before, answers: now }))
		read(now)
	}
	return {
		said,
		setSaid,
		say,
		repair: (row: number, column: Column, words: string) => {
			const cells = { ...answers.repairs?.[String(row)], [column]: words }
			say({ repairs: { ...answers.repairs, [String(row)]: cells } })
		},
		leaveOut: (row: number) => say({ leaveOut: [...(answers.leaveOut ?? []), row] }),
		answer: (row: number, who: string) =>
			setSaid((now) => ({ ...now, same: { ...now.same, [String(row)]: who } })),
		setPeople: (people: RosterPeople) => setSaid((now) => ({ ...now, people })),
	}
}

/** What a list is taken in for: a screening day, or to have its players on record. */
export type Purpose = 'day' | 'players'

/** @param into a day that stands, to which players are added */
export function useRoster(purpose: Purpose, into: Standing | undefined) {
	const [team, setTeam] = useState(into?.team ?? '')
	const [day, setDay] = useState(into?.day ?? today())
	const [text, setText] = useState('')
	const [preview, setPreview] = useState<Preview>()
	const [squadId, setSquadId] = useState(into?.squadId)
	const action = useHostAction()
	const about = { team, day, ...(squadId && { squadId }) }
	const look = (words: string, answers: RosterAnswers) =>
		action.run(async () => {
			setPreview(await call('squad.previewRoster', { text: words, answers, ...about }))
			return ''
		})
	const saying = useSaid((answers) => look(text, answers))
	const { said, setSaid } = saying
	/** Other words: what was read and said of the earlier ones no longer holds. */
	const type = (words: string) => {
		setText(words)
		setPreview(undefined)
		setSaid(nothing)
	}
	const take = () =>
		action.run(async () => {
			const { squadId: day, ...taken } = await takeIn(purpose, { text, ...said, ...about })
			if (day) setSquadId(day)
			const done = `${counted(taken.players, 'player')} taken in.`
			if (taken.left.length === 0) {
				if (!into) navigate(placeOf(day))
				type('')
				return done
			}
			const answers = withoutDone(said, taken.taken)
			setSaid({ ...said, answers, same: {} })
			const again = { ...about, text, answers, ...(day && { squadId: day }) }
			setPreview(await call('squad.previewRoster', again))
			return `${done} ${counted(taken.left.length, 'row')} not taken in yet: repair or leave out above.`
		})
	return {
		...saying,
		...said,
		...{ purpose, team, setTeam, day, setDay, text, type, preview, take, action },
		look: () => look(text, said.answers),
		/** Another list: nothing was said of it yet. */
		readFile: (words: string) => {
			type(words)
			look(words, {})
		},
		/** the day that was made meanwhile */
		made: into ? undefined : squadId,
	}
}
export type RosterState = ReturnType<typeof useRoster>
