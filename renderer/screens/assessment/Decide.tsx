/**
 * Decide: each finding accepted, changed or dropped by the clinician; the next pair, heel raise,
 * actions and review.
 */
import {
	Alert,
	AlertTitle,
	Box,
	Button,
	Checkbox,
	Chip,
	FormControlLabel,
	FormGroup,
	Paper,
	Stack,
	Tab,
	Tabs,
	TextField,
	ToggleButton,
	ToggleButtonGroup,
	Typography,
} from '@mui/material'
import { type ReactNode, useId, useState } from 'react'
import type { PerSide } from '../../../shared/engine/findings/assessment.ts'
import type { Finding, Level } from '../../../shared/engine/findings/finding.ts'
import { highestRaise, isDecided, quiet, refers } from '../../../shared/engine/report/signing.ts'
import { choiceWords, overtakenLine } from '../../../shared/engine/visit/decisions.ts'
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { actionWords, capital, defaultWarningSigns } from '../../../shared/engine/words/words.ts'
import { Basis, sentence } from '../../parts/Basis.tsx'
import { DateField } from '../../parts/DateField.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { ReportPreview } from '../../parts/ReportPreview.tsx'
import {
	type ActionRow,
	acceptQuiet,
	actionRows,
	addOwn,
	type Choice,
	choose,
	decide,
	findingsToDecide,
	leftQuiet,
	levels,
	lineOf,
	type MergedWish,
	mergeWishes,
	ownLines,
	raiseLimits,
	raiseTexts,
	readRaise,
	removeLine,
	reviewPath,
	reword,
	setActions,
	setRaise,
	setReview,
	undecidedFindings,
	undecidedWishes,
	wishesOf,
} from './decisions.ts'
import { Insert } from './Insert.tsx'
import { Lacing } from './Lacing.tsx'
import { ShelfMatch } from './ShelfMatch.tsx'
import type { StepProps } from './stepProps.ts'

const chipColour: Record<Level, 'error' | 'warning' | 'primary' | 'default'> = {
	stop: 'error',
	caution: 'warning',
	advise: 'primary',
	note: 'default',
}
const actionHints: readonly ActionRow[] = [
	{
		what: 'Change to a pair with room before the longest toe',
		when: 'before the next match',
		who: 'player and guardian',
	},
	{
		what: 'Calf stretching, knee straight and bent',
		when: 'daily until the review',
		who: 'player',
	},
	{ what: 'Measure both feet again', when: 'at the review date', who: 'clinic' },
]
const choices: readonly { choice: Choice; title: string }[] = [
	{ choice: 'accept', title: 'Accept' },
	{ choice: 'change', title: 'Change' },
	{ choice: 'drop', title: 'Drop' },
]

function Section({ title, children }: { title: string; children: ReactNode }) {
	const id = useId()
	return (
		<Box component="section" aria-labelledby={id}>
			<Typography variant="h2" id={id} sx={{ mb: 1 }}>
				{title}
			</Typography>
			{children}
		</Box>
	)
}
function Words(props: {
	label: string
	value: string
	max: number
	set: (text: string) => void
	required?: boolean
	error?: boolean
	hint?: string
	placeholder?: string
	lines?: boolean
}) {
	return (
		<TextField
			fullWidth
			size="small"
			label={props.label}
			value={props.value}
			required={props.required ?? false}
			error={props.error ?? false}
			helperText={props.hint}
			placeholder={props.placeholder}
			multiline={props.lines ?? false}
			onChange={(event) => props.set(event.target.value)}
			slotProps={{ htmlInput: { maxLength: props.max }, inputLabel: { shrink: true } }}
		/>
	)
}
function Choose(props: {
	about: string
	value: Choice | undefined
	set: (choice: Choice | null) => void
	without?: Choice
}) {
	const about = props.about.length > 60 ? `${props.about.slice(0, 60).trimEnd()}...` : props.about
	return (
		<ToggleButtonGroup
			exclusive
			size="small"
			color="primary"
			aria-label={`Decision: ${about}`}
			value={props.value ?? null}
			onChange={(_event, choice: Choice | null) => props.set(choice)}
		>
			{choices
				.filter((choice) => choice.choice !== props.without)
				.map((choice) => (
					<ToggleButton key={choice.choice} value={choice.choice} sx={{ minHeight: 44, px: 2 }}>
						{choice.title}
					</ToggleButton>
				))}
		</ToggleButtonGroup>
	)
}
function FindingRow({
	finding,
	draft,
	change,
}: { finding: Finding } & Pick<StepProps, 'draft' | 'change'>) {
	const before = overtakenLine(draft.decisions, finding.id, finding.says)
	const line = before ? undefined : lineOf(draft, finding.id)
	const choice = line && line.choice !== 'add' ? line.choice : undefined
	const unsaid = choice === 'change' && !isDecided(draft.decisions, finding.id, finding.says)
	return (
		<Paper variant="outlined" sx={{ px: 2, py: 1 }}>
			<Basis
				because={finding.because}
				basis={finding.basis}
				head={
					<Stack
						direction="row"
						useFlexGap
						sx={{
							flexWrap: 'wrap',
							columnGap: 1.5,
							rowGap: 0.5,
							alignItems: 'center',
							flex: '1 1 22rem',
							minWidth: 0,
						}}
					>
						<Chip
							size="small"
							variant={quiet(finding) ? 'outlined' : 'filled'}
							color={chipColour[finding.level]}
							label={levels.find((level) => level.level === finding.level)?.title}
							sx={{ minWidth: '4.75rem' }}
						/>
						<Typography
							sx={{
								...sentence,
								flex: '1 1 14rem',
								...(choice === 'drop'
									? { textDecoration: 'line-through', color: 'text.secondary' }
									: {}),
							}}
						>
							{finding.says}
						</Typography>
					</Stack>
				}
				end={
					<Choose
						about={finding.says}
						value={choice}
						set={(next) => change((now) => choose(now, finding.id, next, finding.says))}
					/>
				}
			/>
			{before && (
				<Alert severity="warning" role="note" sx={{ mt: 1 }}>
					This reads otherwise than when you {choiceWords[before.choice]} it. Decide again. Before
					it read: “{before.about}”{before.says ? ` You wrote: “${before.says}”` : ''}
				</Alert>
			)}
			{choice === 'change' && (
				<Stack spacing={1.5} sx={{ mt: 1 }}>
					<Words
						label="Words that stand"
						lines
						max={1000}
						value={line?.says ?? ''}
						error={unsaid}
						hint={
							unsaid ? 'Not decided yet: write other words here, or choose Accept or Drop.' : ''
						}
						set={(says) => change((now) => reword(now, finding.id, { says }))}
					/>
					<Words
						label="Why"
						max={500}
						value={line?.why ?? ''}
						set={(why) => change((now) => reword(now, finding.id, { why }))}
					/>
				</Stack>
			)}
			{choice === 'drop' && (
				<Box sx={{ mt: 1 }}>
					<Words
						label="Why (optional)"
						max={500}
						value={line?.why ?? ''}
						set={(why) => change((now) => reword(now, finding.id, { why }))}
					/>
				</Box>
			)}
		</Paper>
	)
}
function Findings({
	draft,
	change,
	assessment,
}: Pick<StepProps, 'draft' | 'change' | 'assessment'>) {
	const findings = assessment ? findingsToDecide(assessment) : []
	const left = assessment ? undecidedFindings(draft, assessment).length : 0
	const bulk = leftQuiet(draft, findings).length
	return (
		<Section title="Findings">
			<Stack spacing={2}>
				<Stack
					direction="row"
					spacing={2}
					useFlexGap
					sx={{ alignItems: 'center', flexWrap: 'wrap' }}
				>
					<Typography role="status" sx={{ fontWeight: 600 }}>
						{findings.length - left} of {findings.length} decided
					</Typography>
					<Button
						variant="outlined"
						disabled={bulk === 0}
						onClick={() => change((now) => acceptQuiet(now, findings))}
					>
						Accept the notes and advice left undecided
					</Button>
				</Stack>
				{findings.length === 0 && <Typography color="text.secondary">No findings yet.</Typography>}
				{levels.map(({ level, title }) => {
					const own = findings.filter((finding) => finding.level === level)
					return (
						own.length > 0 && (
							<Stack key={level} spacing={1}>
								<Typography variant="h3">{title}</Typography>
								{own.map((one) => (
									<FindingRow key={one.id} finding={one} draft={draft} change={change} />
								))}
							</Stack>
						)
					)
				})}
				<Stack spacing={1}>
					{ownLines(draft).map((one) => {
						const n = one.findingId.replace('own.', '')
						return (
							<Stack
								key={one.findingId}
								direction="row"
								spacing={1}
								sx={{ alignItems: 'flex-start' }}
							>
								<Words
									label={`Your own line ${n}`}
									lines
									max={1000}
									value={one.says ?? ''}
									hint={one.says?.trim() ? '' : 'Write the line, or remove it.'}
									set={(says) => change((now) => reword(now, one.findingId, { says }))}
								/>
								<Button
									aria-label={`Remove your own line ${n}`}
									onClick={() => change((now) => removeLine(now, one.findingId))}
								>
									Remove
								</Button>
							</Stack>
						)
					})}
					<Button sx={{ alignSelf: 'flex-start' }} onClick={() => change(addOwn)}>
						Add a line of your own
					</Button>
				</Stack>
			</Stack>
		</Section>
	)
}
function WishRow({
	wish,
	draft,
	change,
}: { wish: MergedWish } & Pick<StepProps, 'draft' | 'change'>) {
	const choice = lineOf(draft, wish.id)?.choice
	const title = termWords(wish.feature)
	return (
		<Paper variant="outlined" sx={{ p: 2 }}>
			<Stack
				direction="row"
				spacing={2}
				useFlexGap
				sx={{ flexWrap: 'wrap', justifyContent: 'space-between', alignItems: 'flex-start' }}
			>
				<Typography
					sx={{
						...sentence,
						fontWeight: 600,
						...(choice === 'drop' ? { textDecoration: 'line-through' } : {}),
					}}
				>
					{title}
				</Typography>
				<Choose
					about={`${wish.id.startsWith('seek') ? 'seek' : 'avoid'} ${title}`}
					without="change"
					value={choice === 'accept' || choice === 'drop' ? choice : undefined}
					set={(next) => change((now) => choose(now, wish.id, next))}
				/>
			</Stack>
			{wish.reasons.map((reason) => (
				<Basis
					key={reason.rule}
					because={reason.because}
					basis={reason.basis}
					head={
						<Typography variant="body2" sx={{ flex: '1 1 260px' }}>
							{reason.says}
						</Typography>
					}
				/>
			))}
		</Paper>
	)
}
function NextPair({
	draft,
	change,
	assessment,
}: Pick<StepProps, 'draft' | 'change' | 'assessment'>) {
	if (!assessment) return null
	const { target, contradictions } = assessment.footwear
	const all = wishesOf(assessment).length
	return (
		<Section title="Next pair: seek and avoid">
			<Stack spacing={2}>
				{contradictions.map((contradiction) => (
					<Alert key={`${contradiction.feature} ${contradiction.says}`} severity="warning">
						<AlertTitle>Caution: two rules pull apart</AlertTitle>
						{contradiction.says}
					</Alert>
				))}
				{all === 0 ? (
					<Typography color="text.secondary">
						Nothing in the findings asks for a feature or against one.
					</Typography>
				) : (
					<Typography>
						{all - undecidedWishes(draft, assessment).length} of {all} features decided
					</Typography>
				)}
				<Box sx={{ display: 'grid', gridTemplateColumns: { xs: '1fr', lg: '1fr 1fr' }, gap: 2 }}>
					{(['seek', 'avoid'] as const).map((kind) => {
						const rows = mergeWishes(kind, target[kind])
						return (
							rows.length > 0 && (
								<Stack key={kind} spacing={1}>
									<Typography variant="h3">{kind === 'seek' ? 'Seek' : 'Avoid'}</Typography>
									{rows.map((row) => (
										<WishRow key={row.id} wish={row} draft={draft} change={change} />
									))}
								</Stack>
							)
						)
					})}
				</Box>
			</Stack>
		</Section>
	)
}
function HeelRaise({
	draft,
	change,
	assessment,
}: Pick<StepProps, 'draft' | 'change' | 'assessment'>) {
	const [texts, setTexts] = useState(() => raiseTexts(draft))
	const suggested = assessment?.ankle.heelRaiseMm
	const put = (next: PerSide<string>) => {
		setTexts(next)
		change((now) => setRaise(now, next))
	}
	const highest = highestRaise(draft.decisions)
	const above = highest > raiseLimits.stopMm
	const why = draft.decisions.heelRaiseWhy ?? ''
	const oneOnly = (texts.left.trim() === '') !== (texts.right.trim() === '')
	return (
		<Section title="Heel raise">
			<Stack spacing={2}>
				<Stack
					direction="row"
					spacing={2}
					useFlexGap
					sx={{ flexWrap: 'wrap', alignItems: 'flex-start' }}
				>
					{(['left', 'right'] as const).map((side) => {
						const wrong =
							readRaise(texts[side]).says ||
							(oneOnly && texts[side].trim() === '' ? 'Give this side too; 0 for none.' : '')
						const hint =
							wrong || (suggested ? `Suggested: ${suggested[side]} mm` : 'No raise suggested')
						return (
							<TextField
								key={side}
								size="small"
								label={`Heel raise, ${side} (mm)`}
								value={texts[side]}
								error={wrong !== ''}
								helperText={hint}
								onChange={(event) => put({ ...texts, [side]: event.target.value })}
								slotProps={{ htmlInput: { inputMode: 'decimal' }, inputLabel: { shrink: true } }}
							/>
						)
					})}
					<Button
						variant="outlined"
						disabled={!suggested}
						onClick={() =>
							suggested && put({ left: String(suggested.left), right: String(suggested.right) })
						}
					>
						Use the suggestion
					</Button>
				</Stack>
				{highest > raiseLimits.warnMm && (
					<Alert severity="warning">
						{above
							? `${highest} mm is above ${raiseLimits.stopMm} mm in a boot. Write the reason, ` +
								'or lower it.'
							: `${highest} mm is above ${raiseLimits.warnMm} mm in a boot. Check heel hold and ` +
								'stability in the boot.'}
						<Basis
							because={[{ measure: 'highest heel raise', value: highest, unit: 'mm' }]}
							basis={above ? raiseLimits.stopBasis : raiseLimits.warnBasis}
						/>
					</Alert>
				)}
				{(above || why !== '') && (
					<Words
						label={`Reason for a raise above ${raiseLimits.stopMm} mm`}
						max={500}
						required={above}
						error={above && !why.trim()}
						value={why}
						set={(text) => change((now) => decide(now, { heelRaiseWhy: text || undefined }))}
					/>
				)}
			</Stack>
		</Section>
	)
}
function Actions({ draft, change }: Pick<StepProps, 'draft' | 'change'>) {
	const [rows, setRows] = useState(() => actionRows(draft))
	const put = (at: number, patch: Partial<ActionRow>) => {
		const next = rows.map((row, index) => (index === at ? { ...row, ...patch } : row))
		setRows(next)
		change((now) => setActions(now, next))
	}
	return (
		<Section title="What to do now">
			<Stack spacing={1.5}>
				{actionHints.map((hint, at) => {
					const row = rows[at] ?? { what: '', when: '', who: '' }
					const missing = !row.what.trim() && `${row.when}${row.who}`.trim() !== ''
					return (
						<Box
							key={hint.what}
							sx={{
								display: 'grid',
								gridTemplateColumns: { xs: '1fr', md: '3fr 2fr 2fr' },
								gap: 1.5,
							}}
						>
							<Words
								label={`What, ${at + 1}`}
								max={300}
								value={row.what}
								placeholder={hint.what}
								error={missing}
								hint={missing ? 'Say what is to be done, or clear the row.' : ''}
								set={(what) => put(at, { what })}
							/>
							<Words
								label={`When, ${at + 1}`}
								max={80}
								value={row.when}
								placeholder={hint.when}
								set={(when) => put(at, { when })}
							/>
							<Words
								label={`Who, ${at + 1}`}
								max={80}
								value={row.who}
								placeholder={hint.who}
								set={(who) => put(at, { who })}
							/>
						</Box>
					)
				})}
			</Stack>
		</Section>
	)
}
function WarningSigns({ draft, change }: Pick<StepProps, 'draft' | 'change'>) {
	const printed = draft.decisions.warningSigns ?? defaultWarningSigns
	const all = [
		...defaultWarningSigns,
		...printed.filter((one) => !defaultWarningSigns.includes(one)),
	]
	const put = (sign: string, on: boolean) =>
		change((now) => {
			const before = now.decisions.warningSigns ?? defaultWarningSigns
			return decide(now, {
				warningSigns: all.filter((one) => (one === sign ? on : before.includes(one))),
			})
		})
	return (
		<Section title="Warning signs to print">
			<FormGroup>
				{all.map((sign) => (
					<FormControlLabel
						key={sign}
						sx={{ minHeight: 44 }}
						label={capital(sign)}
						control={
							<Checkbox
								checked={printed.includes(sign)}
								onChange={(event) => put(sign, event.target.checked)}
							/>
						}
					/>
				))}
			</FormGroup>
		</Section>
	)
}
function Review({ draft, change, assessment }: Pick<StepProps, 'draft' | 'change' | 'assessment'>) {
	const again = assessment?.growth?.measureAgainBy
	return (
		<Section title="Review">
			<Stack
				direction="row"
				spacing={2}
				useFlexGap
				sx={{ alignItems: 'flex-start', flexWrap: 'wrap' }}
			>
				<Box sx={{ width: 300 }}>
					<DateField
						size="small"
						label="Review date"
						value={draft.raw[reviewPath] ?? draft.decisions.reviewDate ?? ''}
						hint={again ? `Growth suggests measuring again by ${dayInWords(again)}` : undefined}
						set={(text) => change((now) => setReview(now, text))}
					/>
				</Box>
				{again && (
					<Button variant="outlined" onClick={() => change((now) => setReview(now, again))}>
						Use measure-again date
					</Button>
				)}
			</Stack>
		</Section>
	)
}
function Referral({
	draft,
	change,
	assessment,
}: Pick<StepProps, 'draft' | 'change' | 'assessment'>) {
	if (!assessment || !refers(assessment)) return null
	const done = draft.decisions.referralDone ?? ''
	const signs = assessment.screening.items.filter(
		(item) => item.state === 'yes' && item.action === assessment.screening.action,
	)
	return (
		<Stack spacing={1.5}>
			<Alert severity="error" role="alert">
				<AlertTitle>Stop: {actionWords[assessment.screening.action]}</AlertTitle>
				{signs.map((sign) => (
					<Typography key={`${sign.id} ${sign.side}`} variant="body2">
						{sign.says}
						{sign.side === 'left' || sign.side === 'right' ? ` (${sign.side})` : ''}
					</Typography>
				))}
				<Typography variant="body2">
					Act on this before footwear. The record cannot be signed until you write what was done.
				</Typography>
			</Alert>
			<Words
				label="What was done about it"
				lines
				required
				max={1000}
				error={!done.trim()}
				value={done}
				set={(text) => change((now) => decide(now, { referralDone: text || undefined }))}
			/>
		</Stack>
	)
}
const parts = ['Findings', 'Next pair', 'Raise, lacing, insert', 'Actions and review'] as const
type Part = (typeof parts)[number]

export function Decide(props: StepProps & { shelf: Shelf | undefined; shelfTrouble: string }) {
	const { draft, change, assessment, earlier, shelf, shelfTrouble } = props
	const [part, setPart] = useState<Part>('Findings')
	const left: Partial<Record<Part, number>> = assessment
		? {
				Findings: undecidedFindings(draft, assessment).length,
				'Next pair': undecidedWishes(draft, assessment).length,
			}
		: {}
	// where there is no room beside the decisions the preview stands above them, closed until wanted
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'minmax(0, 1fr) fit-content(460px)',
				gap: 3,
				alignItems: 'start',
				'@container (max-width: 66rem)': {
					gridTemplateColumns: 'minmax(0, 1fr)',
					'& > :last-child': { order: -1 },
				},
			}}
		>
			<Stack spacing={3}>
				{!assessment && (
					<Alert severity="warning">
						The findings cannot be worked out from the entries as they stand. Look through the
						earlier steps; what you decide here is kept.
					</Alert>
				)}
				<Referral draft={draft} change={change} assessment={assessment} />
				<Tabs
					value={part}
					onChange={(_event, next: Part) => setPart(next)}
					aria-label="Parts of the decision"
					variant="scrollable"
					sx={{ borderBottom: 1, borderColor: 'divider' }}
				>
					{parts.map((one) => (
						<Tab
							key={one}
							value={one}
							label={left[one] ? `${one} (${left[one]} open)` : one}
							id={`decide-tab-${one}`}
							aria-controls="decide-panel"
							sx={{ minHeight: 48, textTransform: 'none', fontWeight: 600 }}
						/>
					))}
				</Tabs>
				<Stack spacing={4} role="tabpanel" id="decide-panel" aria-labelledby={`decide-tab-${part}`}>
					{part === 'Findings' && (
						<Findings draft={draft} change={change} assessment={assessment} />
					)}
					{part === 'Next pair' && (
						<>
							<NextPair draft={draft} change={change} assessment={assessment} />
							{shelfTrouble ? (
								<Alert severity="warning">
									The shelf did not open, so no model is matched. {shelfTrouble}
								</Alert>
							) : (
								<ShelfMatch {...props} shelf={shelf} />
							)}
						</>
					)}
					{part === 'Raise, lacing, insert' && (
						<>
							<HeelRaise draft={draft} change={change} assessment={assessment} />
							<Lacing draft={draft} change={change} assessment={assessment} />
							<Insert draft={draft} change={change} assessment={assessment} />
						</>
					)}
					{part === 'Actions and review' && (
						<>
							<Actions draft={draft} change={change} />
							<WarningSigns draft={draft} change={change} />
							<Review draft={draft} change={change} assessment={assessment} />
						</>
					)}
					{part !== 'Actions and review' && (
						<Box>
							<Button
								variant="outlined"
								onClick={() => setPart(parts[parts.indexOf(part) + 1] ?? part)}
							>
								Next: {parts[parts.indexOf(part) + 1]}
							</Button>
						</Box>
					)}
				</Stack>
			</Stack>
			<ReportPreview draft={draft} assessment={assessment} earlier={earlier} />
		</Box>
	)
}
