/** What the desk answers about what is due for one player: about one thing, or all of it. */
import { Box, Button } from '@mui/material'
import { type KeyboardEvent, useState } from 'react'
import { mayAnswer, type RecallAnswer } from '../../../shared/desk/recall/answer.ts'
import type { RecallItem, RecallLine } from '../../../shared/desk/recall/calls.ts'
import type { Due } from '../../../shared/desk/recall/item.ts'
import { Field, Form, Trouble } from '../../parts/form.tsx'
import { parseDate } from '../../parts/parseDate.ts'
import type { PersonRole } from '../../parts/roles.ts'
import { change, useHostAction } from '../../query.ts'
import { itemWords } from './words.ts'

const all = 'All of it'
/** The answers as they are offered: whether a day goes with them, and what it is called. */
const offered: readonly {
	title: string
	day?: string
	make: (day: string) => RecallAnswer
}[] = [
	{ title: 'Booked', day: 'Booked for', make: (on) => ({ what: 'booked', on }) },
	{ title: 'Asked to wait', day: 'Wait until', make: (until) => ({ what: 'wait', until }) },
	{ title: 'Not needed', make: () => ({ what: 'not-needed' }) },
	{ title: 'Seen', day: 'Seen on', make: (on) => ({ what: 'seen', on }) },
	{ title: 'Due after all', make: () => ({ what: 'due' }) },
]
const dueOf = ({ kind, from, pair, on }: RecallItem): Due => ({
	kind,
	from,
	...(pair !== undefined && { pair }),
	on,
})
/** Any day serves to ask who may; the host looks at the day. */
const someDay = '2000-01-01'

type Entries = Record<'about' | 'title' | 'day', string>
interface AnsweringProps {
	line: RecallLine
	role: PersonRole
	close: () => void
}
export function Answering({ line, role, close }: AnsweringProps) {
	const [entries, setEntries] = useState<Entries>({ about: all, title: '', day: '' })
	const { about, title, day } = entries
	const action = useHostAction()
	const chosen = line.items.filter((item) => itemWords(item) === about)
	const items = chosen.length > 0 ? chosen : line.items
	const answers = offered.filter(({ make }) =>
		items.every((item) => role !== undefined && mayAnswer(role, item, make(someDay))),
	)
	const answer = answers.find((known) => known.title === title)
	const save = () =>
		action.run(async () => {
			if (!answer) throw new Error('Answer is not chosen. Choose one from the list.')
			const given = answer.day === undefined ? { ok: true as const, iso: '' } : parseDate(day)
			if (!given.ok) throw new Error(`${answer.day}: ${given.says}`)
			await change('recall.answer', {
				playerId: line.playerId,
				items: items.map(dueOf),
				answer: answer.make(given.iso),
			})
			close()
			return ''
		})
	const onKey = ({ key }: KeyboardEvent) => {
		if (key === 'Escape') close()
	}
	return (
		<Box onKeyDown={onKey} sx={{ pl: { xs: 0, sm: 7 }, pb: 1.5, pt: 1 }}>
			<Form
				label={`Answer for ${line.name}`}
				submit={save}
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fill, minmax(min(100%, 15rem), 1fr))',
					gap: 1.5,
					alignItems: 'start',
					maxWidth: '62rem',
				}}
			>
				<Fields line={line} entries={entries} set={setEntries} answers={answers} />
				<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					<Button type="submit" variant="contained" disabled={action.busy}>
						Keep the answer
					</Button>
					<Button onClick={close}>Leave it</Button>
				</Box>
			</Form>
			<Box sx={{ mt: action.says ? 1.5 : 0 }}>
				<Trouble says={action.says} />
			</Box>
		</Box>
	)
}

interface FieldsProps {
	line: RecallLine
	entries: Entries
	set: (entries: Entries) => void
	/** what may be answered about what is chosen */
	answers: typeof offered
}
function Fields({ line, entries, set, answers }: FieldsProps) {
	const { about, title, day } = entries
	const label = answers.find((known) => known.title === title)?.day
	return (
		<>
			{line.items.length > 1 && (
				<Field
					label="About"
					value={about}
					set={(value) => set({ about: value, title: '', day })}
					options={[all, ...line.items.map(itemWords)]}
					focus
				/>
			)}
			<Field
				label="Answer"
				value={title}
				set={(value) => set({ ...entries, title: value })}
				options={answers.map((known) => known.title)}
				focus={line.items.length === 1}
				hint={
					answers.length < offered.length
						? 'A review ends by a visit, or by the clinician.'
						: 'A signed visit ends it by itself.'
				}
			/>
			{label !== undefined && (
				<Field
					label={label}
					value={day}
					set={(value) => set({ ...entries, day: value })}
					type="date"
					hint="Such as 3 February 2027"
				/>
			)}
		</>
	)
}
