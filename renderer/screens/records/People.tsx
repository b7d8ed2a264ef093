/** The people who work with the records: the list, a new passphrase, taking off, adding. */
import { Box, Button } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Outcome } from '../../parts/form.tsx'
import { acts, Panel, Rows } from '../../parts/panels.tsx'
import { useHost, useHostAction } from '../../query.ts'
import { AddPerson } from './AddPerson.tsx'
import { ChangeKey } from './ChangeKey.tsx'
import { GivePassphrase } from './GivePassphrase.tsx'
import { Rights } from './Rights.tsx'
import { TakeOff } from './TakeOff.tsx'

export type Person = OutputOf<'people.list'>['people'][number]

function stateOf({ active, hasPin, pinBarred, oldKey }: Person): string {
	if (!active) return 'taken off'
	return [
		'active',
		pinBarred ? 'PIN shut after wrong tries' : hasPin ? 'with PIN' : '',
		oldKey ? 'has not unlocked since the upgrade' : '',
	]
		.filter(Boolean)
		.join(', ')
}
/** What is asked about one person, below the list. */
interface Asked {
	about: Person
	what: 'passphrase' | 'off'
}
function Acts({ person, ask }: { person: Person; ask: (asked: Asked) => void }) {
	if (person.role === 'owner') return ''
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
			<Button
				size="small"
				variant="outlined"
				aria-label={`New passphrase for ${person.name}`}
				onClick={() => ask({ about: person, what: 'passphrase' })}
			>
				New passphrase
			</Button>
			{person.active && (
				<Button
					size="small"
					variant="outlined"
					aria-label={`Take ${person.name} off`}
					onClick={() => ask({ about: person, what: 'off' })}
				>
					Take off
				</Button>
			)}
		</Box>
	)
}
export function People() {
	const list = useHost('people.list', {})
	const action = useHostAction()
	const [asked, setAsked] = useState<Asked>()
	const close = () => setAsked(undefined)
	const ask = (next: Asked) => {
		action.forget()
		setAsked(next)
	}
	return (
		<Answered of={list} what="the people">
			{({ people }) => {
				const names = people.map(({ name }) => name)
				return (
					<>
						<Panel
							title="People"
							hint="Each has a passphrase of their own. Whatever they do stands under their name."
						>
							<Rows
								label="People"
								heads={['Name', 'Registration', 'Role', 'State', acts]}
								empty="Nobody yet."
								rows={people.map((person) => ({
									key: person.personId,
									cells: [
										person.name,
										person.registration,
										person.role,
										stateOf(person),
										<Acts key="acts" person={person} ask={ask} />,
									],
								}))}
							/>
						</Panel>
						<Outcome of={action} />
						{asked?.what === 'passphrase' && (
							<GivePassphrase
								key={asked.about.personId}
								person={asked.about}
								names={names}
								action={action}
								close={close}
							/>
						)}
						{asked?.what === 'off' && (
							<TakeOff
								key={asked.about.personId}
								person={asked.about}
								action={action}
								close={close}
							/>
						)}
						<AddPerson names={names} />
						<Rights />
						<ChangeKey />
					</>
				)
			}}
		</Answered>
	)
}
