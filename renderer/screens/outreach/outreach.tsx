/** Outreach: packs that go out, what a laptop carries, coming home, and what is still to be answered. */
import { Alert, Box, Button, FormControlLabel, Checkbox, Radio, RadioGroup, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { Panel, Rows, timeWords, useAction, useAnswer } from '../records/parts.tsx'

type Listed = OutputOf<'outreach.list'>
/** Kinds of records as a person calls them. */
const kindWords: Record<string, string> = { clinic: 'letterhead', settings: 'settings', person: 'people of the clinic', player: 'player details', visit: 'visits', report: 'reports', 'visit-note': 'notes on visits', consent: 'consents', hold: 'holds', merge: 'joined players', season: 'seasons', answer: 'answers', squad: 'entries of screening days', 'sending-note': 'notes on sending', shelf: 'shelf', protocol: 'protocol' }
type Merged = OutputOf<'outreach.merge'>
const defaultDays = 14
const dayMs = 86_400_000
const mostShown = 200
const form = (submit: () => void) => ({ component: 'form' as const, noValidate: true, sx: { display: 'grid', gap: 2 }, onSubmit: (event: React.FormEvent) => { event.preventDefault(); submit() } })

export function Outreach() {
	const { value, says, again } = useAnswer('outreach.list', {})
	return (
		<Stack spacing={3}>
			<Typography variant="h1">Outreach</Typography>
			<Trouble says={says} />
			{value && (value.carries ? <Laptop carries={value.carries} again={again} /> : <><MakePack made={again} /><ComeHome done={again} /></>)}
			{value && value.questions.length > 0 && <Questions questions={value.questions} answered={again} />}
			{value && value.merged.length > 0 && <Merges merged={value.merged} again={again} />}
			{value && value.out.length > 0 && (
				<Panel title="Packs that went out">
					<Rows label="Packs that went out" heads={['Made', 'By', 'Opens until', 'File', 'Players', 'Came home']} empty="None yet." rows={value.out.map((one) => ({ key: one.packId, cells: [timeWords(one.madeAt), one.by, dayInWords(one.expires), one.file, one.players.join(', '), one.home ? 'Yes' : 'Not yet'] }))} />
				</Panel>
			)}
		</Stack>
	)
}
function MakePack({ made }: { made: () => void }) {
	const { value } = useAnswer('players.search', { query: '', limit: mostShown })
	const [query, setQuery] = useState('')
	const [chosen, setChosen] = useState<string[]>([])
	const [history, setHistory] = useState<'none' | 'last' | 'all'>('last')
	const [folder, setFolder] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [again, setAgain] = useState('')
	const [expires, setExpires] = useState(new Date(Date.now() + defaultDays * dayMs).toISOString().slice(0, 10))
	const action = useAction()
	const cards = (value?.cards ?? []).filter((one) => chosen.includes(one.playerId) || `${one.givenName} ${one.familyName} ${one.club ?? ''}`.toLowerCase().includes(query.toLowerCase()))
	const make = () => action.run(async () => {
		if (passphrase !== again) throw new Error('The two passphrases differ. Type the same one twice.')
		const { file, players, records } = await call('outreach.makePack', { playerIds: chosen, history, folder: folder.trim(), passphrase, expires })
		setPassphrase('')
		setAgain('')
		made()
		return `${file} was written: ${players} players, ${records} records. Open it on a laptop without records: first start, "Bring these records here".`
	})
	return (
		<Panel title="Make a pack" hint="One sealed file for the laptop: the chosen players with their history, shelf, letterhead and settings. It has a passphrase of its own.">
			<Box {...form(make)}>
				<Field label="Find players" value={query} set={setQuery} optional hint={`${chosen.length} chosen${(value?.total ?? 0) > mostShown ? `; the first ${mostShown} of ${value?.total} are listed` : ''}. With nobody chosen the pack is empty but for clinic and shelf.`} />
				<Box role="group" aria-label="Players for the pack" sx={{ maxHeight: 260, overflowY: 'auto', border: 1, borderColor: 'divider', borderRadius: 1, px: 2 }}>
					{cards.map((one) => <Box key={one.playerId}><FormControlLabel control={<Checkbox checked={chosen.includes(one.playerId)} onChange={(event) => setChosen((now) => (event.target.checked ? [...now, one.playerId] : now.filter((id) => id !== one.playerId)))} />} label={`${one.givenName} ${one.familyName}, born ${dayInWords(one.birthDate)}${one.club ? `, ${one.club}` : ''}`} /></Box>)}
				</Box>
				<Box><Button variant="outlined" onClick={() => setChosen([...new Set([...chosen, ...cards.map((one) => one.playerId)])])}>Choose all that are shown</Button></Box>
				<Box role="group" aria-label="History">
					<Typography sx={{ fontWeight: 600 }}>History</Typography>
					<RadioGroup row aria-label="History" value={history} onChange={(_, next) => setHistory(next as typeof history)}>
						<FormControlLabel value="last" control={<Radio />} label="Last visit" />
						<FormControlLabel value="all" control={<Radio />} label="All visits" />
						<FormControlLabel value="none" control={<Radio />} label="No visits" />
					</RadioGroup>
				</Box>
				<Field label="Folder or stick" value={folder} set={setFolder} hint="A whole path, such as /media/stick" />
				<Field label="Opens until" type="date" value={expires} set={setExpires} hint="After this day the laptop only makes the file for the way back." />
				<Field label="Passphrase of the pack" type="password" value={passphrase} set={setPassphrase} autoComplete="new-password" hint="8 characters or more, not your own. Keep it apart from the stick." />
				<Field label="Passphrase of the pack again" type="password" value={again} set={setAgain} autoComplete="new-password" />
				<Trouble says={action.says} />
				{action.done && <Alert severity="success" role="status">{action.done}</Alert>}
				<Box><Button type="submit" variant="contained" disabled={action.busy || !folder.trim() || !passphrase}>Make the pack</Button></Box>
			</Box>
		</Panel>
	)
}
function Laptop({ carries, again }: { carries: NonNullable<Listed['carries']>; again: () => void }) {
	const [folder, setFolder] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [receipt, setReceipt] = useState('')
	const back = useAction()
	const remove = useAction()
	if (carries.removedAt) return <Alert severity="info" role="status">The records of this pack were taken off this laptop on {timeWords(carries.removedAt)}. A register line for each player stays. For the next trip open the new pack in another data folder.</Alert>
	return (
		<>
			<Alert severity={carries.ranOut ? 'warning' : 'info'} role="status">{carries.ranOut ? `This pack ran out on ${dayInWords(carries.expires)}. Nothing is lost: make the file for the way back and bring it home.` : `This laptop carries a pack made by ${carries.by} on ${timeWords(carries.madeAt)}. It opens until ${dayInWords(carries.expires)}.`}</Alert>
			<Panel title="What this laptop carries" hint={`${carries.players.length} players; ${Object.entries(carries.counts).map(([kind, count]) => `${count} ${kindWords[kind] ?? kind}`).join(', ')}. Shelf: ${carries.shelf ? 'yes' : 'no'}. Protocol ${carries.protocol.id}, version ${carries.protocol.version}. Entered here: ${carries.newHere.records} records, ${carries.newHere.drafts} open drafts.`}>
				<Rows label="Players on this laptop" heads={['Player', 'Born', 'Visits carried']} empty="No players: only clinic and shelf." rows={carries.players.map((one) => ({ key: one.playerId, cells: [one.name, dayInWords(one.birthDate), one.visits] }))} />
			</Panel>
			<Panel title="The way back" hint="Writes everything that stands here into one sealed file. It may be made as often as needed.">
				<Box {...form(() => back.run(async () => { const { file, records, drafts } = await call('outreach.makeReturn', { folder: folder.trim(), passphrase }); setPassphrase(''); again(); return `${file} was written: ${records} records, ${drafts} drafts. Bring it in at home under Outreach.` }))}>
					<Field label="Folder or stick" value={folder} set={setFolder} hint="A whole path, such as /media/stick" />
					<Field label="Passphrase of the pack" type="password" value={passphrase} set={setPassphrase} />
					<Trouble says={back.says} />
					{back.done && <Alert severity="success" role="status">{back.done}</Alert>}
					<Box><Button type="submit" variant="contained" disabled={back.busy || !folder.trim() || !passphrase}>Make the file for the way back</Button></Box>
				</Box>
			</Panel>
			<Panel title="Take the records off this laptop" hint="Once home has read the file it shows a receipt. With it the copy here is removed for good; a register line for each player stays.">
				<Box {...form(() => remove.run(async () => { const { records, lines } = await call('outreach.remove', { receipt }); again(); return `${records} records were removed; ${lines} register lines stay.` }))}>
					<Field label="Receipt from home" value={receipt} set={setReceipt} hint="Three groups of four, such as 1a2b-3c4d-5e6f" />
					<Trouble says={remove.says} />
					<Box><Button type="submit" variant="outlined" color="error" disabled={remove.busy || !receipt.trim()}>Remove the copy here</Button></Box>
				</Box>
			</Panel>
		</>
	)
}
function Counts({ counts, trailRows }: { counts: Merged['counts']; trailRows: number }) {
	return <Typography>Records before {counts.before}, after {counts.after}. In the file {counts.in}: {counts.added} added, {counts.already} here already, {counts.quarantined} put aside, {counts.heldBack} held back since they were destroyed here.{trailRows > 0 ? ` With ${trailRows} rows of the laptop's audit trail, kept as a section of their own under Audit trail.` : ''}</Typography>
}
function Found({ found }: { found: Pick<Merged, 'duplicates' | 'quarantined'> & Partial<Pick<Merged, 'notices'>> }) {
	return (
		<>
			{found.notices?.map((one) => <Alert key={one} severity="warning">{one}</Alert>)}
			{found.quarantined.map((one) => <Alert key={one.record} severity="error">{one.says}</Alert>)}
			{found.duplicates.map((one) => <Alert key={`${one.playerId} ${one.like}`} severity="warning">{one.name} came home and {one.likeName} stands here: {one.why === 'twin' ? 'same birth date and family name. Twins, or one person entered twice?' : 'perhaps one person entered twice.'} Nothing was joined; open the player to join them.</Alert>)}
		</>
	)
}
function ComeHome({ done }: { done: () => void }) {
	const [file, setFile] = useState('')
	const [passphrase, setPassphrase] = useState('')
	const [looked, setLooked] = useState<Merged>()
	const action = useAction()
	const look = () => action.run(async () => { setLooked(await call('outreach.previewMerge', { file: file.trim(), passphrase })); return '' })
	const bring = () => action.run(async () => {
		const { receipt, counts, again } = await call('outreach.merge', { file: file.trim(), passphrase })
		setLooked(undefined)
		setPassphrase('')
		done()
		return again ? 'This file was brought in before. Nothing was added twice.' : `Brought in: ${counts.added} records added, before ${counts.before}, after ${counts.after}. Receipt for the laptop: ${receipt}.`
	})
	return (
		<Panel title="Come home" hint="Brings a file for the way back into these records. Nothing here is overwritten. Look first: nothing is changed until you bring it in.">
			<Box {...form(look)}>
				<Field label="File for the way back" value={file} set={(next) => { setFile(next); setLooked(undefined) }} hint="A whole path, such as /media/stick/return-2027-01-20-ab12cd.lwpack" />
				<Field label="Passphrase of the pack" type="password" value={passphrase} set={setPassphrase} />
				<Trouble says={action.says} />
				{action.done && <Alert severity="success" role="status">{action.done}</Alert>}
				<Box><Button type="submit" variant="outlined" disabled={action.busy || !file.trim() || !passphrase}>Look into the file</Button></Box>
				{looked && (
					<Box role="status" sx={{ display: 'grid', gap: 1 }}>
						<Typography sx={{ fontWeight: 600 }}>Made by {looked.madeBy} on {timeWords(looked.madeAt)}; {looked.players.length} players, {looked.drafts} open drafts.{looked.again ? ' It was brought in before.' : ''}</Typography>
						<Counts counts={looked.counts} trailRows={looked.trailRows} />
						<Typography>{looked.questions === 0 ? 'No questions.' : `${looked.questions} questions to answer afterwards.`} {looked.draftsBoth.length === 0 ? '' : `Drafts changed in both places, both kept: ${looked.draftsBoth.map((one) => one.name).join(', ')}.`}</Typography>
						<Found found={looked} />
						<Box><Button variant="contained" disabled={action.busy} onClick={bring}>Bring it in</Button></Box>
					</Box>
				)}
			</Box>
		</Panel>
	)
}
function Questions({ questions, answered }: { questions: Listed['questions']; answered: () => void }) {
	return <Panel title="To answer" hint="Recorded differently in two places. Both stand in the records; your answer is a record too.">{questions.map((one) => <Question key={`${one.what} ${one.id}`} one={one} answered={answered} />)}</Panel>
}
function Question({ one, answered }: { one: Listed['questions'][number]; answered: () => void }) {
	const [choices, setChoices] = useState<Record<string, string>>({})
	const action = useAction()
	return (
		<Box {...form(() => action.run(async () => { await call('outreach.answer', { what: one.what, id: one.id, ...(one.playerId === undefined ? {} : { playerId: one.playerId }), choices }); answered(); return '' }))}>
			<Typography sx={{ fontWeight: 600 }}>{one.says}</Typography>
			{one.fields.map(({ field, values }) => (
				<RadioGroup key={field} aria-label={`${field} of ${one.name || 'the clinic'}`} value={choices[field] ?? ''} onChange={(_, record) => setChoices((now) => ({ ...now, [field]: record }))}>
					{values.map((value) => <FormControlLabel key={value.record} value={value.record} control={<Radio />} label={`${field}: ${value.shown} (${value.place}, ${timeWords(value.at)})`} />)}
				</RadioGroup>
			))}
			<Trouble says={action.says} />
			<Box><Button type="submit" variant="contained" disabled={action.busy || Object.keys(choices).length < one.fields.length}>This one counts</Button></Box>
		</Box>
	)
}
function Merges({ merged, again }: { merged: Listed['merged']; again: () => void }) {
	return (
		<Panel title="What came home">
			{merged.map((one) => (
				<Box key={one.packId} sx={{ display: 'grid', gap: 1 }}>
					<Typography sx={{ fontWeight: 600 }}>{timeWords(one.at)}, brought in by {one.by}. Receipt for the laptop: {one.receipt}</Typography>
					<Counts counts={one.counts} trailRows={one.trailRows} />
					<Found found={one} />
					{one.draftsBoth.map((both) => <TwoDrafts key={both.drafts.join()} name={both.name} drafts={both.drafts} again={again} />)}
				</Box>
			))}
		</Panel>
	)
}
function Choose({ path, says, draft, choices, set }: { path: string; says: string; draft: string; choices: Record<string, string>; set: (next: Record<string, string>) => void }) {
	return <FormControlLabel control={<Radio name={path} checked={choices[path] === draft} onChange={() => set({ ...choices, [path]: draft })} slotProps={{ input: { 'aria-label': `${path}: ${says}` } }} />} label={says} />
}
function TwoDrafts({ name, drafts, again }: { name: string; drafts: string[]; again: () => void }) {
	const { value, says } = useAnswer('outreach.compareDrafts', { drafts })
	const action = useAction()
	const [choices, setChoices] = useState<Record<string, string>>({})
	const differing = value?.differences.filter((one) => one.first !== '' && one.second !== '') ?? []
	const join = () => action.run(async () => { await call('outreach.joinDrafts', { drafts, choices }); again(); return '' })
	const put = (draftId: string) => action.run(async () => { await call('outreach.putDraftAway', { draftId }); again(); return '' })
	return (
		<Alert severity="warning">
			<Typography sx={{ fontWeight: 600 }}>The draft of {name} was changed in two places. Both are kept. Join them: what only one has stands; choose where both say something else. Or go on with one of them.</Typography>
			<Trouble says={says || action.says} />
			{value && <Rows label={`Drafts of ${name}`} heads={['Field', `First, saved ${timeWords(value.savedAt[0] ?? '')}`, `Second, saved ${timeWords(value.savedAt[1] ?? '')}`]} empty="They say the same." rows={value.differences.map((one) => ({ key: one.path, cells: [one.path, one.first && one.second ? <Choose key="1" path={one.path} says={one.first} draft={drafts[0] ?? ''} choices={choices} set={setChoices} /> : one.first || 'not recorded', one.first && one.second ? <Choose key="2" path={one.path} says={one.second} draft={drafts[1] ?? ''} choices={choices} set={setChoices} /> : one.second || 'not recorded'] }))} />}
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, mt: 1 }}><Button variant="contained" disabled={action.busy || !value || differing.some((one) => !choices[one.path])} onClick={join}>Join the two</Button><Button variant="outlined" onClick={() => put(drafts[1] ?? '')}>Go on with the first</Button><Button variant="outlined" onClick={() => put(drafts[0] ?? '')}>Go on with the second</Button></Box>
		</Alert>
	)
}
