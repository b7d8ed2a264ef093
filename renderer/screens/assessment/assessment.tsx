/** The guided assessment: steps of measures, findings beside them, the draft saved as it grows. */
import { Alert, Box, Button, Paper, Typography } from '@mui/material'
import { useCallback, useDeferredValue, useEffect, useMemo, useRef, useState } from 'react'
import { assess } from '../../../shared/engine/assess.ts'
import type { ProtocolFile } from '../../../shared/engine/protocol/protocol.ts'
import { ageYears, dayInWords } from '../../../shared/engine/visit/age.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { call, wordsOf } from '../../host.ts'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { type Command, useCommands } from '../../parts/commands.ts'
import { readPath } from '../../parts/draft-path.ts'
import { FieldRow, RowColumns, undone } from '../../parts/MeasureField.tsx'
import { Measuring } from '../../parts/Measuring.tsx'
import { PasteBlock, PasteDialog } from '../../parts/PasteDialog.tsx'
import { applyPaste, type PasteCell, planPaste } from '../../parts/pasteBlock.ts'
import { walkByEnter } from '../../parts/walkByEnter.ts'
import { Decide } from './decide/Decide.tsx'
import { Findings } from './Findings.tsx'
import { Flags } from './Flags.tsx'
import { Conditions, Pairs, Surfaces } from './Lists.tsx'
import { focusNext } from './nextThing.ts'
import { Sign } from './sign/Sign.tsx'
import type { StepProps } from './stepProps.ts'
import { steps } from './steps.ts'
import { type OpenDraft, useDraft } from './useDraft.ts'

export function AssessmentScreen({ playerId }: { playerId: string }) {
	const { open, trouble } = useDraft(playerId)
	const [protocol, setProtocol] = useState<ProtocolFile>()
	const [protocolTrouble, setProtocolTrouble] = useState('')
	useEffect(() => {
		loadProtocol().then(setProtocol, (error) =>
			setProtocolTrouble(`The clinic's protocol did not open: ${wordsOf(error)}`),
		)
	}, [])
	// the findings count the shelf too: it is asked before the first of them is shown, so that none
	// moves down later
	const [shelf, setShelf] = useState<{ held: Shelf | undefined; trouble: string }>()
	useEffect(() => {
		call('shelf.get', {}).then(
			(held) => setShelf({ held: held.shelf, trouble: '' }),
			(error) => setShelf({ held: undefined, trouble: wordsOf(error) }),
		)
	}, [])
	if (!open || !protocol || !shelf)
		return trouble || protocolTrouble ? (
			<Alert severity="error">{trouble || protocolTrouble}</Alert>
		) : (
			<Typography role="status">Opening the visit.</Typography>
		)
	return (
		<Walk
			playerId={playerId}
			open={open}
			protocol={protocol}
			shelf={shelf.held}
			shelfTrouble={shelf.trouble}
		/>
	)
}

/**
 * Where the window is narrow or the text large, by whatever way, what stood side by side stands one
 * below the other.
 */
const narrow = '@container (max-width: 54rem)'
/**
 * Opens or closes the page beside Decide, which stands behind all decisions for the keys; opened,
 * it has the focus. @returns false where no preview stands
 */
function togglePreview(): boolean {
	const preview = document.querySelector<HTMLDetailsElement>('details[data-preview]')
	if (!preview) return false
	preview.open = !preview.open
	if (preview.open) preview.querySelector('summary')?.focus()
	return true
}
/**
 * The part of a step that is left out for a player of 18 or over still has its number, so that the
 * hand can learn them.
 */
const numberOf = (name: string): number => steps.findIndex((step) => step.name === name) + 1

interface WalkProps {
	playerId: string
	open: OpenDraft
	protocol: ProtocolFile
	shelf: Shelf | undefined
	shelfTrouble: string
}
function Walk({ playerId, open, protocol, shelf, shelfTrouble }: WalkProps) {
	const { content: draft, earlier, draftId, saved, change, saveNow, closed, undo, redo } = open
	const [signed, setSigned] = useState(false)
	const heading = useRef<HTMLHeadingElement>(null)
	const stepBox = useRef<HTMLDivElement>(null)
	const later = useRef<ReturnType<typeof setTimeout>>(undefined)
	const [focused, setFocused] = useState('')
	const [helpOpen, setHelpOpen] = useState(false)
	const [said, setSaid] = useState('')
	const [pasted, setPasted] = useState<readonly PasteCell[]>()
	const visit = useDeferredValue(draft.visit)
	const { assessment, trouble } = useMemo(() => {
		try {
			return { assessment: assess(visit, earlier, protocol, shelf), trouble: '' }
		} catch {
			return {
				assessment: undefined,
				trouble:
					'The findings cannot be worked out from these entries. Nothing entered is lost; ' +
					'correct the last entry.',
			}
		}
	}, [visit, earlier, shelf, protocol])
	const { player, visitDate } = draft.visit
	const age = ageYears(player.birthDate, visitDate)
	const shown = steps.filter((step) => step.name !== 'Growth' || age < 18)
	const step = shown.find((one) => one.name === draft.step) ?? shown[0]!
	const at = shown.indexOf(step)
	const goTo = useCallback(
		(name: string) => {
			setFocused('')
			setSaid('')
			change((now) => ({ ...now, step: name }))
			void saveNow().catch(() => {})
			requestAnimationFrame(() => heading.current?.focus())
		},
		[change, saveNow],
	)
	const missing =
		assessment?.missing.filter(({ path }) =>
			step.asks.some((prefix) => path === prefix || path.startsWith(`${prefix}.`)),
		) ?? []
	const last = earlier
		.filter((one) => one.visitDate < visitDate)
		.toSorted((a, b) => (a.visitDate < b.visitDate ? 1 : -1))[0]
	const props: StepProps = { draft, change, assessment, earlier, draftId, playerId, saveNow, goTo }
	const missingPaths = missing.map((missed) => missed.path)
	const commands = useMemo(
		(): Command[] =>
			signed
				? []
				: steps
						.filter((one) => one.name !== 'Growth' || age < 18)
						.map((one) => ({
							name: `Step: ${one.name}`,
							keys: `Alt+${numberOf(one.name)}`,
							single: String(numberOf(one.name)),
							run: () => goTo(one.name),
						}))
						.concat(
							step.name === 'Decide'
								? [
										{
											name: 'Preview of the report, beside Decide',
											keys: 'Alt+P',
											single: '',
											run: togglePreview,
										},
									]
								: [],
						),
		[signed, age, goTo, step.name],
	)
	useCommands(commands)
	// a button may still be waiting for the host when the key comes: one more try before saying that
	// nothing is left
	const toNext = (tries = 1) => {
		clearTimeout(later.current)
		if (!stepBox.current) return
		if (focusNext(stepBox.current, missingPaths)) setSaid('')
		else if (tries > 0) later.current = setTimeout(() => toNext(tries - 1), 400)
		else setSaid('Nothing is left to do on this step.')
	}
	const onKey = (event: KeyboardEvent) => {
		clearTimeout(later.current)
		if (signed || document.querySelector('[role=dialog]')) return
		const key = event.key.toLowerCase()
		if (event.altKey && !event.ctrlKey && !event.shiftKey) {
			const wanted = shown.find(
				(one) => `Digit${numberOf(one.name)}` === event.code || String(numberOf(one.name)) === key,
			)
			if (wanted) {
				event.preventDefault()
				goTo(wanted.name)
			}
			if (key === 'n' || event.code === 'KeyN') {
				event.preventDefault()
				toNext()
			}
		}
		if (
			event.altKey &&
			!event.ctrlKey &&
			!event.shiftKey &&
			(key === 'p' || event.code === 'KeyP') &&
			togglePreview()
		)
			event.preventDefault()
		if (event.ctrlKey && !event.altKey && (key === 'z' || key === 'y')) {
			event.preventDefault()
			const back = key === 'z' && !event.shiftKey
			const moved = back ? undo() : redo()
			if (moved) dispatchEvent(new Event(undone))
			setSaid(
				moved
					? back
						? 'One entry taken back.'
						: 'Entry put back.'
					: back
						? 'Nothing to take back.'
						: 'Nothing to put back.',
			)
		}
		if (key === 'f1' && focused) {
			event.preventDefault()
			setHelpOpen(!helpOpen)
		}
	}
	useEffect(() => () => clearTimeout(later.current), [])
	const keys = useRef(onKey)
	useEffect(() => {
		keys.current = onKey
	})
	useEffect(() => {
		const pressed = (event: KeyboardEvent) => keys.current(event)
		// before the page's own keys, so that F1 means the field here
		addEventListener('keydown', pressed, true)
		return () => removeEventListener('keydown', pressed, true)
	}, [])
	const takeBlock = useCallback(
		(path: string, text: string): boolean => {
			const rows = step.groups.flatMap((group) => group.fields.map((row) => row.paths))
			if (!rows.some((row) => (row as readonly string[]).includes(path))) return false
			setPasted(planPaste(text, rows, path))
			return true
		},
		[step],
	)
	const wide = step.name === 'Decide' || step.name === 'Sign and report'
	return (
		<Box>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'baseline', mb: 1 }}>
				<Typography variant="h2" component="p">
					{player.givenName} {player.familyName}
				</Typography>
				<Typography color="text.secondary">
					{age} years, {player.sex}, visit of {dayInWords(visitDate)}
				</Typography>
				<Typography
					role="status"
					color={saved.startsWith('Not') ? 'error' : 'text.secondary'}
					sx={{ ml: 'auto' }}
				>
					{signed ? 'Signed' : saved}
				</Typography>
			</Box>
			<Box
				component="nav"
				aria-label="Steps"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 0.5, mb: 2 }}
			>
				{shown.map((one) => (
					<Button
						key={one.name}
						disabled={signed}
						variant={one === step ? 'contained' : 'text'}
						aria-current={one === step ? 'step' : undefined}
						aria-keyshortcuts={`Alt+${numberOf(one.name)}`}
						onClick={() => goTo(one.name)}
					>
						<Box component="span" aria-hidden sx={{ mr: 0.75, opacity: 0.75, fontWeight: 400 }}>
							{numberOf(one.name)}
						</Box>
						{one.name}
					</Button>
				))}
			</Box>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: wide ? 'minmax(0, 1fr)' : 'minmax(0, 1.8fr) minmax(300px, 1fr)',
					gap: 3,
					alignItems: 'start',
					[narrow]: { gridTemplateColumns: 'minmax(0, 1fr)' },
				}}
			>
				<Box
					ref={stepBox}
					sx={{ display: 'grid', gap: 2 }}
					onKeyDown={wide ? undefined : walkByEnter}
					onFocus={(event) => {
						const { path } = (event.target as HTMLElement).dataset
						if (path !== undefined) setFocused(path)
					}}
				>
					<PasteBlock value={takeBlock}>
						<Typography role="status" sx={{ minHeight: said ? '1.5em' : 0, fontWeight: 600 }}>
							{said}
						</Typography>
						<Typography variant="h1" ref={heading} tabIndex={-1}>
							{step.name}
						</Typography>
						{step.asks.length > 0 ? (
							<Typography role="status" color="text.secondary">
								{missing.length === 0
									? 'Nothing is missing on this step.'
									: `Still missing: ${missing.map((missed) => missed.says).join('; ')}.`}
							</Typography>
						) : null}
						{step.groups.map((group) => (
							<Paper
								key={group.heading}
								variant="outlined"
								sx={{ p: 2, display: 'grid', gap: 0.5 }}
							>
								<RowColumns
									label={<Typography variant="h2">{group.heading}</Typography>}
									two={group.fields.some((row) => row.paths.length === 2)}
								>
									{group.fields.some((row) => row.paths.length === 2)
										? ['Left', 'Right'].map((side) => (
												<Typography key={side} variant="h3" component="p" sx={{ mb: 0.5 }}>
													{side}
												</Typography>
											))
										: null}
								</RowColumns>
								{group.fields.map((row) => (
									<FieldRow
										key={row.paths[0]}
										paths={row.paths}
										hint={row.hint}
										draft={draft}
										change={change}
										before={last ? row.paths.map((path) => readPath(last, path)) : []}
									/>
								))}
							</Paper>
						))}
						{step.name === 'Player and play' ? (
							<>
								<Paper variant="outlined" sx={{ p: 2 }}>
									<Typography variant="h2">Surfaces</Typography>
									<Surfaces draft={draft} change={change} />
								</Paper>
								<Paper variant="outlined" sx={{ p: 2 }}>
									<Typography variant="h2">Conditions</Typography>
									<Conditions draft={draft} change={change} />
								</Paper>
								<Paper variant="outlined" sx={{ p: 2 }}>
									<Typography variant="h2">Pairs the player owns</Typography>
									<Pairs draft={draft} change={change} />
								</Paper>
							</>
						) : null}
						{step.name === 'Flags' ? <Flags {...props} /> : null}
						{step.name === 'Decide' ? (
							<Decide {...props} shelf={shelf} shelfTrouble={shelfTrouble} />
						) : null}
						{step.name === 'Sign and report' ? (
							<Sign
								{...props}
								onSigned={() => {
									closed()
									setSigned(true)
								}}
							/>
						) : null}
					</PasteBlock>
					{at < shown.length - 1 ? (
						<Box>
							<Button variant="contained" size="large" onClick={() => goTo(shown[at + 1]!.name)}>
								Next step
							</Button>
						</Box>
					) : null}
				</Box>
				{wide ? null : (
					<Box
						sx={{
							position: 'sticky',
							top: 12,
							maxHeight: 'calc(100vh - 24px)',
							overflow: 'auto',
							[narrow]: { position: 'static', maxHeight: 'none' },
							'& > aside': { position: 'static', maxHeight: 'none' },
						}}
					>
						{focused ? (
							<Measuring path={focused} draft={draft} open={helpOpen} setOpen={setHelpOpen} />
						) : null}
						<Findings
							assessment={assessment}
							trouble={trouble}
							topics={step.topics}
							visit={visit}
							earlier={earlier}
						/>
					</Box>
				)}
			</Box>
			{pasted ? (
				<PasteDialog
					cells={pasted}
					close={() => setPasted(undefined)}
					take={() => {
						change((now) => applyPaste(now, pasted))
						dispatchEvent(new Event(undone))
						setPasted(undefined)
					}}
				/>
			) : null}
		</Box>
	)
}
