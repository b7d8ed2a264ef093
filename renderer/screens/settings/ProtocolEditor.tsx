/**
 * Every threshold with its unit, source and strength. A change is tried on the demo visits first,
 * then kept as a new version with a reason.
 */
import { Box, Button, Stack } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { Field, Outcome } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, useHostAction, useReading } from '../../query.ts'
import { ChangeNotSaved } from './ChangeNotSaved.tsx'
import { ThresholdRoom } from './ThresholdRoom.tsx'
import { fitsWords, keys, rooms } from './thresholds.ts'
import { type ProtocolDraft, useProtocolDraft } from './useProtocolDraft.ts'
import { Versions } from './Versions.tsx'

type Held = OutputOf<'protocol.get'>
interface Kept {
	held: Held
	versions: OutputOf<'protocol.versions'>['versions']
}
async function read(): Promise<Kept> {
	const [held, { versions }] = await Promise.all([
		call('protocol.get', {}),
		call('protocol.versions', {}),
	])
	return { held, versions }
}
interface Filter {
	find: string
	/** only what was set here */
	onlySet: boolean
}
function FindThreshold({
	held,
	filter,
	setFilter,
	set,
}: {
	held: Held
	filter: Filter
	setFilter: (filter: Filter) => void
	/** how many values are set here */
	set: number
}) {
	return (
		<Panel
			title={
				held.savedAs
					? `Protocol of this clinic, version ${held.file.revision}`
					: 'Protocol: the shipped values'
			}
			hint={
				'Every threshold that a finding may rest on. A value set here is marked in each finding ' +
				'that uses it. Restoring brings back the shipped value with its source.'
			}
		>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: { xs: '1fr', md: '2fr 1fr' },
					gap: 2,
					alignItems: 'end',
				}}
			>
				<Field
					label="Find a threshold"
					value={filter.find}
					set={(find) => setFilter({ ...filter, find })}
					optional
					hint="By name, unit, source or group of players."
				/>
				<Box sx={{ pb: 3 }}>
					<Button
						variant={filter.onlySet ? 'contained' : 'outlined'}
						aria-pressed={filter.onlySet}
						onClick={() => setFilter({ ...filter, onlySet: !filter.onlySet })}
					>
						Only values set here ({set})
					</Button>
				</Box>
			</Box>
		</Panel>
	)
}
function Rooms({
	filter: { find, onlySet },
	draft,
	put,
	mayChange,
}: {
	filter: Filter
	draft: ProtocolDraft
	put: ProtocolDraft['put'] | undefined
	mayChange: boolean
}) {
	const found = keys.filter((key) => (!onlySet || key in draft.texts) && fitsWords(key, find))
	const scheme = { now: draft.scheme, set: mayChange ? draft.setScheme : undefined }
	return rooms.map((room) => (
		<ThresholdRoom
			key={room}
			room={room}
			open={find.trim() !== '' || onlySet}
			shown={found.filter((key) => key.startsWith(`${room}.`))}
			draft={draft}
			put={put}
			scheme={room === 'posture' && !find && !onlySet ? scheme : undefined}
		/>
	))
}
function Editor({ kept: { held, versions }, mayChange }: { kept: Kept; mayChange: boolean }) {
	const [filter, setFilter] = useState<Filter>({ find: '', onlySet: false })
	const draft = useProtocolDraft(held.file)
	const action = useHostAction()
	const save = () =>
		action.run(async () => {
			await change('protocol.save', {
				values: { ...draft.values },
				fpiScheme: draft.scheme,
				why: draft.why,
				follows: held.savedAs,
			})
			await loadProtocol()
			draft.setWhy('')
			return 'Saved. New assessments use it at once; signed ones keep what they were signed under.'
		})
	const put: ProtocolDraft['put'] = (key, text) => {
		action.forget()
		draft.put(key, text)
	}
	return (
		<Stack spacing={2}>
			<FindThreshold
				held={held}
				filter={filter}
				setFilter={setFilter}
				set={Object.keys(draft.texts).length}
			/>
			{mayChange && draft.edited ? (
				<ChangeNotSaved draft={draft} busy={action.busy} save={save} />
			) : null}
			<Outcome of={action} />
			<Rooms
				filter={filter}
				draft={draft}
				put={mayChange ? put : undefined}
				mayChange={mayChange}
			/>
			<Versions
				versions={versions}
				savedAs={held.savedAs}
				take={mayChange ? draft.take : undefined}
			/>
		</Stack>
	)
}
export function ProtocolEditor({ mayChange }: { mayChange: boolean }) {
	const answer = useReading('protocol', {}, ['protocol.get', 'protocol.versions'], read)
	return (
		<Answered of={answer} what="the protocol">
			{(kept) => <Editor kept={kept} mayChange={mayChange} />}
		</Answered>
	)
}
