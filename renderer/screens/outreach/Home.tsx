/**
 * Coming home: look into the file, bring it in, answer what two places say differently, and join
 * what was entered twice.
 */
import {
	Alert,
	Box,
	Button,
	FormControlLabel,
	Link,
	Radio,
	RadioGroup,
	Typography,
} from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { Panel, Rows, timeWords, useAction, useAnswer, Way } from '../../parts/panels.tsx'
import { form } from './form.ts'
import { draftField, questionField, questionValue, questionWords } from './words.ts'

type Listed = OutputOf<'outreach.list'>
type Merged = OutputOf<'outreach.merge'>
type Duplicate = Listed['merged'][number]['duplicates'][number]

function Counts({
	counts,
	trailRows,
	owner,
}: {
	counts: Merged['counts']
	trailRows: number
	owner?: boolean
}) {
	return (
		<Typography>
			Records before {counts.before}, after {counts.after}. In the file {counts.in}: {counts.added}{' '}
			added, {counts.already} here already, {counts.quarantined} put aside, {counts.heldBack} held
			back since they were destroyed here.
			{trailRows > 0
				? ` With ${counted(trailRows, 'row')} of the laptop's audit trail, kept as a section of ` +
					'its own under Audit trail.'
				: ''}
			{trailRows > 0 && owner ? <Way to="#/records/audit">Read the trail</Way> : null}
		</Typography>
	)
}
const twice = (one: Duplicate) =>
	`${one.name} came home and ${one.likeName} stands here: ` +
	`${one.why === 'twin' ? 'same birth date and family name. Twins, or one person entered twice?' : 'perhaps one person entered twice.'}`
const personLink = {
	display: 'inline-flex',
	alignItems: 'center',
	minHeight: 44,
	px: 1,
	fontWeight: 600,
}
/**
 * Two entries that look like one person: both can be opened, and joined by a person; what was
 * joined can be taken apart.
 */
function Twice({ one, leads, again }: { one: Duplicate; leads: boolean; again: () => void }) {
	const action = useAction()
	const join = () =>
		action.run(async () => {
			await call('players.merge', {
				from: one.playerId,
				into: one.like,
				reason: 'entered twice, found on coming home from an outreach day',
			})
			again()
			return ''
		})
	const apart = (mergeId: string) =>
		action.run(async () => {
			await call('players.unmerge', {
				mergeId,
				reason: 'joined by mistake on coming home from an outreach day',
			})
			again()
			return ''
		})
	return (
		<Alert severity={one.joined ? 'success' : 'warning'}>
			<Typography>
				{one.joined
					? `${one.name} came home and was joined to ${one.likeName}: they are shown as one ` +
						'player. Both entries are kept.'
					: `${twice(one)} Nothing was joined.`}
			</Typography>
			<Trouble says={action.says} />
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, mt: 1 }}>
				{!one.joined && (
					<Link href={`#/players/${one.playerId}`} color="inherit" sx={personLink}>
						Open the one that came
					</Link>
				)}
				<Link href={`#/players/${one.like}`} color="inherit" sx={personLink}>
					{one.joined ? 'Open the player' : 'Open the one here'}
				</Link>
				{leads &&
					(one.joined ? (
						<Button
							variant="outlined"
							disabled={action.busy}
							onClick={() => apart(one.joined ?? '')}
						>
							Take them apart again
						</Button>
					) : (
						<Button variant="outlined" disabled={action.busy} onClick={join}>
							One person: join them
						</Button>
					))}
			</Box>
		</Alert>
	)
}
function Found({
	found,
}: {
	found: Pick<Merged, 'quarantined'> & Partial<Pick<Merged, 'notices'>>
}) {
	return (
		<>
			{found.notices?.map((notice) => (
				<Alert key={notice} severity="warning">
					{notice}
				</Alert>
			))}
			{found.quarantined.map((one) => (
				<Alert key={one.record} severity="error">
					{one.says}
				</Alert>
			))}
		</>
	)
}
export function ComeHome({ done }: { done: () => void }) {
	const [file, setFile] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [looked, setLooked] = useState<Merged>()
	const action = useAction()
	const look = () =>
		action.run(async () => {
			setLooked(await call('outreach.previewMerge', { file: file.trim(), passphrase }))
			return ''
		})
	const bring = () =>
		action.run(async () => {
			const { receipt, counts, again, questions } = await call('outreach.merge', {
				file: file.trim(),
				passphrase,
			})
			setLooked(undefined)
			setPassphrase('')
			done()
			return again
				? 'This file was brought in before. Nothing was added twice. Receipt for the laptop: ' +
						`${receipt}.`
				: `Brought in: ${counted(counts.added, 'record')} added, before ${counts.before}, after ` +
						`${counts.after}. Receipt for the laptop: ` +
						`${receipt}.${questions > 0 ? ` ${counted(questions, 'question stands', 'questions stand')} under To answer.` : ''}`
		})
	return (
		<Panel
			title="Come home"
			hint="Brings a file for the way back into these records. Nothing here is overwritten. Look first: nothing is changed until you bring it in."
		>
			<Box {...form(look)}>
				<Field
					label="File for the way back"
					value={file}
					set={(next) => {
						setFile(next)
						setLooked(undefined)
					}}
					hint="A whole path, such as /media/stick/return-2027-01-20-ab12cd.lwpack"
				/>
				<Field
					label="Passphrase of the pack"
					type="password"
					value={passphrase}
					set={(next) => {
						setPassphrase(next)
						setLooked(undefined)
					}}
				/>
				<Trouble says={action.says} />
				{action.done && (
					<Alert severity="success" role="status">
						{action.done}
					</Alert>
				)}
				<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
					<Button
						type="submit"
						variant="outlined"
						disabled={action.busy || !file.trim() || !passphrase}
					>
						Look into the file
					</Button>
					{!action.done && (
						<Needs
							fields={[
								[file.trim(), 'file for the way back'],
								[passphrase, 'passphrase of the pack'],
							]}
						/>
					)}
				</Box>
				{looked && (
					<Box role="status" sx={{ display: 'grid', gap: 1 }}>
						<Typography sx={{ fontWeight: 600 }}>
							Made by {looked.madeBy} on {timeWords(looked.madeAt)};{' '}
							{counted(looked.players.length, 'player')}, {counted(looked.drafts, 'open draft')}.
							{looked.again ? ' It was brought in before.' : ''}
						</Typography>
						<Counts counts={looked.counts} trailRows={looked.trailRows} />
						<Typography>
							{looked.questions === 0
								? 'No questions.'
								: `${counted(looked.questions, 'question')} to answer afterwards.`}{' '}
							{looked.draftsBoth.length === 0
								? ''
								: 'Drafts changed in both places, both kept: ' +
									`${looked.draftsBoth.map((one) => one.name).join(', ')}.`}
						</Typography>
						<Found found={looked} />
						{looked.duplicates.map((duplicate) => (
							<Alert key={`${duplicate.playerId} ${duplicate.like}`} severity="warning">
								{twice(duplicate)} Nothing is joined by itself: you are asked after bringing it in.
							</Alert>
						))}
						<Box>
							<Button variant="contained" disabled={action.busy} onClick={bring}>
								Bring it in
							</Button>
						</Box>
					</Box>
				)}
			</Box>
		</Panel>
	)
}
export function Questions({
	questions,
	leads,
	answered,
}: {
	questions: Listed['questions']
	leads: boolean
	answered: () => void
}) {
	return (
		<Panel
			title="To answer"
			hint={
				'Recorded differently in two places. Both stand in the records; ' +
				`${leads ? 'your answer is a record too' : 'a clinician or the owner answers'}.`
			}
		>
			{questions.map((question) => (
				<Question
					key={`${question.what} ${question.id}`}
					one={question}
					leads={leads}
					answered={answered}
				/>
			))}
		</Panel>
	)
}
function Question({
	one,
	leads,
	answered,
}: {
	one: Listed['questions'][number]
	leads: boolean
	answered: () => void
}) {
	const [choices, setChoices] = useState<Record<string, string>>({})
	const action = useAction()
	return (
		<Box
			{...form(() =>
				action.run(async () => {
					await call('outreach.answer', {
						what: one.what,
						id: one.id,
						...(one.playerId === undefined ? {} : { playerId: one.playerId }),
						choices,
					})
					answered()
					return ''
				}),
			)}
		>
			<Typography sx={{ fontWeight: 600 }}>{questionWords(one)}</Typography>
			{one.fields.map(({ field, values }) => (
				<RadioGroup
					key={field}
					aria-label={`${questionField(one, field)} of ${one.name || 'the clinic'}`}
					value={choices[field] ?? ''}
					onChange={(_, record) => setChoices((now) => ({ ...now, [field]: record }))}
				>
					{values.map((value) => (
						<FormControlLabel
							key={value.record}
							value={value.record}
							disabled={!leads}
							control={<Radio />}
							label={
								`${questionField(one, field)}: ${questionValue(one, value.shown)} ` +
								`(${value.place}, ${timeWords(value.at)})`
							}
						/>
					))}
				</RadioGroup>
			))}
			<Trouble says={action.says} />
			{leads && (
				<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 2 }}>
					<Button
						type="submit"
						variant="outlined"
						disabled={action.busy || Object.keys(choices).length < one.fields.length}
					>
						This one counts
					</Button>
					{Object.keys(choices).length < one.fields.length && (
						<Typography variant="body2" color="textSecondary">
							Choose one {one.fields.length === 1 ? 'of the two' : 'for each field'} first.
						</Typography>
					)}
				</Box>
			)}
		</Box>
	)
}
export function Merges({
	merged,
	leads,
	owner,
	again,
}: {
	merged: Listed['merged']
	leads: boolean
	owner: boolean
	again: () => void
}) {
	return (
		<Panel title="What came home">
			{merged.map((one) => (
				<Box key={one.packId} sx={{ display: 'grid', gap: 1 }}>
					<Typography sx={{ fontWeight: 600 }}>
						{timeWords(one.at)}, brought in by {one.by}. Receipt for the laptop: {one.receipt}
					</Typography>
					<Counts counts={one.counts} trailRows={one.trailRows} owner={owner} />
					<Found found={one} />
					{one.duplicates.map((two) => (
						<Twice key={`${two.playerId} ${two.like}`} one={two} leads={leads} again={again} />
					))}
					{one.draftsBoth.map((both) => (
						<TwoDrafts
							key={both.drafts.join()}
							name={both.name}
							drafts={both.drafts}
							leads={leads}
							again={again}
						/>
					))}
				</Box>
			))}
		</Panel>
	)
}
interface Choosing {
	path: string
	says: string
	draft: string
	choices: Record<string, string>
	leads: boolean
	set: (next: Record<string, string>) => void
}
function Choose({ path, says, draft, choices, leads, set }: Choosing) {
	if (!leads) return says
	return (
		<FormControlLabel
			control={
				<Radio
					name={path}
					checked={choices[path] === draft}
					onChange={() => set({ ...choices, [path]: draft })}
					slotProps={{ input: { 'aria-label': `${draftField(path)}: ${says}` } }}
				/>
			}
			label={says}
		/>
	)
}
function TwoDrafts({
	name,
	drafts,
	leads,
	again,
}: {
	name: string
	drafts: string[]
	leads: boolean
	again: () => void
}) {
	const { value, says } = useAnswer('outreach.compareDrafts', { drafts })
	const action = useAction()
	const [choices, setChoices] = useState<Record<string, string>>({})
	const differing =
		value?.differences.filter(
			(difference) => difference.first !== '' && difference.second !== '',
		) ?? []
	const open = differing.filter((one) => !choices[one.path])
	const join = () =>
		action.run(async () => {
			await call('outreach.joinDrafts', { drafts, choices })
			again()
			return ''
		})
	const put = (draftId: string) =>
		action.run(async () => {
			await call('outreach.putDraftAway', { draftId })
			again()
			return ''
		})
	const cell = (one: { path: string; first: string; second: string }, which: 0 | 1) => {
		const says = which === 0 ? one.first : one.second
		return one.first && one.second ? (
			<Choose
				key={which}
				path={one.path}
				says={says}
				draft={drafts[which] ?? ''}
				choices={choices}
				leads={leads}
				set={setChoices}
			/>
		) : (
			says || 'not recorded'
		)
	}
	return (
		<Alert severity="warning" sx={{ '& .MuiAlert-message': { width: '100%' } }}>
			<Typography sx={{ fontWeight: 600 }}>
				The draft of {name} was changed in two places. Both are kept. Join them: what only one has
				stands; choose where both say something else. Or go on with one of them.
			</Typography>
			<Trouble says={says || action.says} />
			{value && (
				<Rows
					label={`Drafts of ${name}`}
					heads={[
						'Field',
						`First, saved ${timeWords(value.savedAt[0] ?? '')}`,
						`Second, saved ${timeWords(value.savedAt[1] ?? '')}`,
					]}
					empty="They say the same."
					rows={value.differences.map((difference) => ({
						key: difference.path,
						cells: [draftField(difference.path), cell(difference, 0), cell(difference, 1)],
					}))}
				/>
			)}
			{leads && (
				<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1, mt: 1 }}>
					<Button
						variant="outlined"
						disabled={action.busy || !value || open.length > 0}
						onClick={join}
					>
						Join the two
					</Button>
					<Button variant="outlined" disabled={action.busy} onClick={() => put(drafts[1] ?? '')}>
						Go on with the first
					</Button>
					<Button variant="outlined" disabled={action.busy} onClick={() => put(drafts[0] ?? '')}>
						Go on with the second
					</Button>
					{open.length > 0 && (
						<Typography variant="body2">
							To join, choose first: {open.map((one) => draftField(one.path)).join(', ')}.
						</Typography>
					)}
				</Box>
			)}
		</Alert>
	)
}
