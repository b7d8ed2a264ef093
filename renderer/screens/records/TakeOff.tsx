/** A person leaves: what is taken from them, what they leave behind, and who looks after it. */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Field, Form, Sheet } from '../../parts/form.tsx'
import { change, type HostAction, useHost } from '../../query.ts'
import { mustBeGiven, oldCopies } from './ChangeKey.tsx'
import type { Person } from './People.tsx'

type Leaving = OutputOf<'people.leaving'>
const keyStays =
	' The key of the records could not be changed: the recovery key was printed by an earlier ' +
	'version. Issue a new recovery key under My access, then change the key of the records here.'
const many = (count: number, one: string, more: string): string =>
	count === 1 ? `1 ${one}` : `${count} ${more}`

/** What they leave behind, a sentence each. */
function behind(name: string, leaving: Leaving): string[] {
	const { drafts, theirsToCountersign, waitForAny, outbox, recall } = leaving
	const lines: [number, string][] = [
		[
			drafts,
			`${many(drafts, 'open draft', 'open drafts')} in which ${name} typed last: kept, and ` +
				'whoever assesses goes on with it on the page of the player.',
		],
		[
			theirsToCountersign,
			`${many(theirsToCountersign, 'visit that', 'visits that')} ${name} signed as a student: the ` +
				'countersignature is still to be given, by a clinician or you.',
		],
		[
			waitForAny,
			`${many(waitForAny, 'visit of a student', 'visits of students')} without a ` +
				'countersignature: another clinician or you must give it.',
		],
		[
			outbox,
			`${many(outbox, 'document', 'documents')} in the outbox that ${name} looks after: say below ` +
				'who does from now on.',
		],
		[
			recall,
			`${many(recall, 'player', 'players')} due whose last visit ${name} signed: ` +
				`${recall === 1 ? 'stays' : 'all stay'} in Due under that name, for everybody.`,
		],
	]
	return lines.flatMap(([count, says]) => (count > 0 ? [says] : []))
}
function Behind({ name, leaving }: { name: string; leaving: Leaving }) {
	const lines = behind(name, leaving)
	if (lines.length === 0)
		return (
			<Typography sx={{ gridColumn: '1 / -1' }}>
				No draft, no document and no countersignature waits for {name}.
			</Typography>
		)
	return (
		<Box sx={{ gridColumn: '1 / -1' }}>
			<Typography>What {name} leaves behind:</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{lines.map((says) => (
					<li key={says}>{says}</li>
				))}
			</Box>
		</Box>
	)
}
interface TakeOffProps {
	person: Person
	action: HostAction
	close: () => void
}
/** Names may be the same: then the place in the list tells them apart. */
const optionsOf = ({ takers }: Leaving): string[] =>
	takers.map(({ name }, at) =>
		takers.some((other, place) => place < at && other.name === name) ? `${name} (${at + 1})` : name,
	)
function Asked({
	person: { personId, name },
	action: { busy, run },
	close,
	leaving,
}: TakeOffProps & { leaving: Leaving }) {
	const [reason, setReason] = useState('left the clinic')
	const [taker, setTaker] = useState('')
	const options = optionsOf(leaving)
	const retire = async () => {
		const outboxTo = leaving.takers[options.indexOf(taker)]?.personId
		if (leaving.outbox > 0 && outboxTo === undefined)
			throw new Error(
				'Who looks after the documents is not chosen. Choose one from the list. Nothing was changed.',
			)
		const { keyNotChanged, needNewPassphrase, handedOver } = await change(
			'people.retire',
			present({ personId, reason, outboxTo }),
		)
		close()
		const key = keyNotChanged
			? keyStays
			: ` The key of the records was changed. ${oldCopies}${mustBeGiven(needNewPassphrase)}`
		const papers = handedOver
			? ` ${many(handedOver, 'document', 'documents')} in the outbox went to ${taker}.`
			: ''
		return `${name} can no longer unlock.${papers}${key}`
	}
	return (
		<Form label={`Take ${name} off`} submit={() => run(retire)}>
			<Sheet
				title={`Take ${name} off?`}
				hint="Passphrase and PIN are taken away, and the key of the records is changed with it. What they wrote and signed stays under their name."
			>
				<Behind name={name} leaving={leaving} />
				<Typography sx={{ gridColumn: '1 / -1' }}>{oldCopies}</Typography>
				{leaving.outbox > 0 && (
					<Field
						label="Who looks after the documents"
						value={taker}
						set={setTaker}
						options={options}
					/>
				)}
				<Field label="Reason" value={reason} set={setReason} />
				<Box sx={{ display: 'flex', gap: 1, alignItems: 'end' }}>
					<Button type="submit" variant="contained" disabled={busy}>
						Take off
					</Button>
					<Button onClick={close} disabled={busy}>
						Keep
					</Button>
				</Box>
			</Sheet>
		</Form>
	)
}
export function TakeOff(props: TakeOffProps) {
	const leaving = useHost('people.leaving', { personId: props.person.personId })
	return (
		<Answered of={leaving} what="what they leave behind">
			{(value) => <Asked {...props} leaving={value} />}
		</Answered>
	)
}
