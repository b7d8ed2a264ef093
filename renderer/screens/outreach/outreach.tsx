/**
 * Outreach: packs that go out, what a laptop carries, coming home, and what is still to be
 * answered.
 */
import {
	Alert,
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	Radio,
	RadioGroup,
	Stack,
	Typography,
} from '@mui/material'
import { useState } from 'react'
import { leastPassphrase } from '../../../shared/desk/workplace/passphrase.ts'
import { addDays } from '../../../shared/engine/visit/age.ts'
import { call } from '../../host.ts'
import { dayInWords, today } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { counted, Needs } from '../../parts/Needs.tsx'
import { Panel, Rows, timeWords, useAction, useAnswer } from '../../parts/panels.tsx'
import { may, type PersonRole } from '../../parts/roles.ts'
import { form } from './form.ts'
import { ComeHome, Merges, Questions } from './Home.tsx'
import { Laptop } from './Laptop.tsx'

const defaultDays = 14
const mostShown = 200

/**
 * @param role who works here: packs are made and brought home by clinicians and the owner, a
 * student works on the laptop
 */
export function Outreach({ role }: { role: PersonRole }) {
	const { value, says, again } = useAnswer('outreach.list', {})
	const leads = may(role).lead
	if (role === 'reception')
		return (
			<Stack spacing={3}>
				<Typography variant="h1">Outreach</Typography>
				<Alert severity="info">
					Packs are made, carried and brought home by those who assess. Ask a clinician, or hand
					this PC over to one.
				</Alert>
			</Stack>
		)
	const drafts = value?.merged.reduce((sum, one) => sum + one.draftsBoth.length, 0) ?? 0
	const open = [
		value?.questions.length ? counted(value.questions.length, 'question') : '',
		drafts ? `${counted(drafts, 'draft')} kept twice` : '',
	].filter(Boolean)
	return (
		<Stack spacing={3}>
			<Typography variant="h1">Outreach</Typography>
			<Trouble says={says} />
			{value && open.length > 0 && (
				<Alert severity="warning" role="status">
					To settle after coming home: {open.join(' and ')}.{' '}
					{value.questions.length > 0 ? 'See To answer, below.' : 'See What came home, below.'}
				</Alert>
			)}
			{value?.carries && <Laptop carries={value.carries} leads={leads} again={again} />}
			{value &&
				!value.carries &&
				(leads ? (
					<>
						<MakePack made={again} />
						<ComeHome done={again} />
					</>
				) : (
					<Alert severity="info">
						Packs are made and brought home by a clinician or the owner. What came home stands
						below.
					</Alert>
				))}
			{value && value.questions.length > 0 && (
				<Questions questions={value.questions} leads={leads} answered={again} />
			)}
			{value && value.merged.length > 0 && (
				<Merges merged={value.merged} leads={leads} owner={role === 'owner'} again={again} />
			)}
			{value && !value.carries && (
				<Panel title="Packs that went out">
					<Rows
						label="Packs that went out"
						heads={['Made', 'By', 'Opens until', 'File', 'Players', 'Came home']}
						empty="None yet. Choose the players above, then a folder or stick, and make the pack."
						rows={value.out.map((one) => ({
							key: one.packId,
							cells: [
								timeWords(one.madeAt),
								one.by,
								dayInWords(one.expires),
								one.file,
								one.players.join(', ') || 'none',
								one.home ? 'Yes' : 'Not yet',
							],
						}))}
					/>
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
	const [expires, setExpires] = useState(addDays(today(), defaultDays))
	const action = useAction()
	const cards = (value?.cards ?? []).filter(
		(card) =>
			chosen.includes(card.playerId) ||
			`${card.givenName} ${card.familyName} ${card.club ?? ''}`
				.toLowerCase()
				.includes(query.toLowerCase()),
	)
	const make = () =>
		action.run(async () => {
			if (passphrase.length < leastPassphrase)
				throw new Error(
					`Passphrase of the pack has ${passphrase.length} characters. Choose one of ` +
						`${leastPassphrase} or more.`,
				)
			if (passphrase !== again)
				throw new Error('The two passphrases differ. Type the same one twice.')
			const { file, players, records } = await call('outreach.makePack', {
				playerIds: chosen,
				history,
				folder: folder.trim(),
				passphrase,
				expires,
			})
			setPassphrase('')
			setAgain('')
			made()
			return (
				`${file} was written: ${counted(players, 'player')}, ` +
				`${counted(records, 'record')}. Open it on a laptop without records: first start, ` +
				'"Bring these records here".'
			)
		})
	return (
		<Panel
			title="Make a pack"
			hint="One sealed file for the laptop: the chosen players with their history, shelf, letterhead and settings. It has a passphrase of its own."
		>
			<Box {...form(make)}>
				<Field
					label="Find players"
					value={query}
					set={setQuery}
					optional
					hint={
						`${chosen.length} ` +
						`chosen${(value?.total ?? 0) > mostShown ? `; the first ${mostShown} of ${value?.total} are listed` : ''}. ` +
						'With nobody chosen the pack is empty but for clinic and shelf.'
					}
				/>
				<Box
					role="group"
					aria-label="Players for the pack"
					sx={{
						maxHeight: 260,
						overflowY: 'auto',
						border: 1,
						borderColor: 'divider',
						borderRadius: 1,
						px: 2,
					}}
				>
					{value && cards.length === 0 && (
						<Typography color="textSecondary" sx={{ py: 1.5 }}>
							{value.total === 0
								? 'No player on record yet.'
								: 'Nobody fits. Type less of the name.'}
						</Typography>
					)}
					{cards.map((card) => (
						<Box key={card.playerId}>
							<FormControlLabel
								control={
									<Checkbox
										checked={chosen.includes(card.playerId)}
										onChange={(event) =>
											setChosen((now) =>
												event.target.checked
													? [...now, card.playerId]
													: now.filter((id) => id !== card.playerId),
											)
										}
									/>
								}
								label={
									`${card.givenName} ${card.familyName}, born ` +
									`${dayInWords(card.birthDate)}${card.club ? `, ${card.club}` : ''}`
								}
							/>
						</Box>
					))}
				</Box>
				<Box>
					<Button
						variant="outlined"
						onClick={() =>
							setChosen([...new Set([...chosen, ...cards.map((card) => card.playerId)])])
						}
					>
						Choose all that are shown
					</Button>
				</Box>
				<Box role="group" aria-label="History">
					<Typography sx={{ fontWeight: 600 }}>History</Typography>
					<RadioGroup
						row
						aria-label="History"
						value={history}
						onChange={(_, next) => setHistory(next as typeof history)}
					>
						<FormControlLabel value="last" control={<Radio />} label="Last visit" />
						<FormControlLabel value="all" control={<Radio />} label="All visits" />
						<FormControlLabel value="none" control={<Radio />} label="No visits" />
					</RadioGroup>
				</Box>
				<Field
					label="Folder or stick"
					value={folder}
					set={setFolder}
					hint="A whole path, such as /media/stick"
				/>
				<Field
					label="Opens until"
					type="date"
					value={expires}
					set={setExpires}
					hint="After this day the laptop only makes the file for the way back."
				/>
				<Field
					label="Passphrase of the pack"
					type="password"
					value={passphrase}
					set={setPassphrase}
					autoComplete="new-password"
					hint={`${leastPassphrase} characters or more, not your own. Keep it apart from the stick.`}
				/>
				<Field
					label="Passphrase of the pack again"
					type="password"
					value={again}
					set={setAgain}
					autoComplete="new-password"
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
						variant="contained"
						disabled={action.busy || !folder.trim() || !passphrase || !again}
					>
						Make the pack
					</Button>
					{!action.done && (
						<Needs
							fields={[
								[folder.trim(), 'folder or stick'],
								[passphrase, 'passphrase of the pack'],
								[again, 'the passphrase again'],
							]}
						/>
					)}
				</Box>
			</Box>
		</Panel>
	)
}
