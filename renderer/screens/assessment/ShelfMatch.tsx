/**
 * The shelf matched to this player: best first, each with its size, its margins, its reasons, and
 * the sole over the joints.
 */
import {
	Alert,
	AlertTitle,
	Box,
	Button,
	Checkbox,
	Chip,
	Collapse,
	FormControlLabel,
	Link,
	Paper,
	Stack,
	Typography,
} from '@mui/material'
import { useEffect, useId, useRef, useState } from 'react'
import type {
	Assessment,
	MatchReason,
	RankedModel,
} from '../../../shared/engine/findings/assessment.ts'
import { soleFigure } from '../../../shared/engine/footwear/sole-figure.ts'
import { jointRisks } from '../../../shared/engine/footwear/studs.ts'
import { sizeWords } from '../../../shared/engine/footwear/with-shelf.ts'
import { modelWords } from '../../../shared/engine/report/marked.ts'
import type { Model, Shelf } from '../../../shared/engine/visit/shelf.ts'
import { bothSides } from '../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { Basis } from '../../parts/Basis.tsx'
import { clinicProtocol as protocol } from '../../parts/clinicProtocol.ts'
import { Picture } from '../../parts/Picture.tsx'
import { isMarked, marksOf, mostModels, setMark } from './marks.ts'
import type { StepProps } from './stepProps.ts'

/** Models shown before the rest is asked for. */
const first = 5
const verdicts: Record<
	RankedModel['verdict'],
	{ words: string; colour: 'success' | 'warning' | 'error' }
> = {
	suits: { words: 'Suits', colour: 'success' },
	'with-changes': { words: 'With changes', colour: 'warning' },
	unsuitable: { words: 'Stopped', colour: 'error' },
}
const margin = (mm: number | undefined, none: string, over: string, under: string) =>
	mm === undefined ? none : mm < 0 ? `${-mm} mm ${under}` : `${mm} mm ${over}`

function Reasons({ title, rows }: { title: string; rows: readonly MatchReason[] }) {
	return rows.length === 0 ? null : (
		<Box>
			<Typography variant="h3">{title}</Typography>
			{rows.map((row) => (
				<Basis
					key={`${row.rule} ${row.says}`}
					because={row.because}
					basis={row.basis}
					head={
						<Typography variant="body2" sx={{ flex: '1 1 320px' }}>
							{row.says}
							{row.points ? ` (${row.points})` : ''}
						</Typography>
					}
				/>
			))}
		</Box>
	)
}
function Soles({
	one,
	model,
	assessment,
	visit,
}: {
	one: RankedModel
	model: Model | undefined
	assessment: Assessment
	visit: Visit
}) {
	const size = model?.sizes.find(
		(siz) =>
			siz.system === one.size.system &&
			siz.label === one.size.label &&
			siz.fitting === one.size.fitting,
	)
	if (!model || !size) return null
	return (
		<Box>
			<Typography variant="h3">Studs and joints</Typography>
			<Typography variant="body2" color="text.secondary" sx={{ mb: 1 }}>
				True proportion. A ring shows how near a stud counts as under the joint; red marks a joint
				at risk and the studs under it. The foot slides and turns in the boot: feel for the stud
				with the foot inside.
			</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 3 }}>
				{bothSides.map((side) => (
					<Picture
						key={side}
						tell
						height={440}
						caption={`${side === 'left' ? 'Left' : 'Right'} sole of ${one.name}`}
						figure={soleFigure(
							model,
							size,
							assessment.sizing,
							side,
							protocol,
							jointRisks(visit, assessment.posture, side),
						)}
					/>
				))}
			</Box>
		</Box>
	)
}
interface CardProps {
	one: RankedModel
	place: number
	model: Model | undefined
	open: boolean
	full: boolean
}
function Card({
	one,
	place,
	model,
	open: openFirst,
	full,
	draft,
	change,
	assessment,
}: CardProps & Pick<StepProps, 'draft' | 'change'> & { assessment: Assessment }) {
	const [open, setOpen] = useState(openFirst)
	const marked = isMarked(draft, 'model', one.id)
	const { words, colour } = verdicts[one.verdict]
	const told =
		one.stops.length > 0
			? one.stops.map((stop) => stop.says)
			: one.against.slice(0, 2).map((reason) => reason.says)
	const numbers: [string, string][] = [
		['Toe room', `${one.toeRoomMm} mm`],
		[
			'Width at the ball',
			margin(
				one.widthMarginMm,
				'foot not measured',
				'over the wider foot',
				'narrower than the wider foot',
			),
		],
		['Depth over the toes', margin(one.depthMarginMm, 'not measured', 'to spare', 'too little')],
		['Offset', one.offsetMm === undefined ? 'not recorded' : `${one.offsetMm} mm`],
		...(one.price === undefined ? [] : [['Price', String(one.price)] as [string, string]]),
	]
	return (
		<Paper
			component="li"
			variant="outlined"
			sx={{
				p: 2,
				display: 'grid',
				gap: 1,
				...(marked ? { borderColor: 'primary.main', borderWidth: 2 } : {}),
			}}
		>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1.5, alignItems: 'center' }}>
				<Typography variant="h3" tabIndex={-1}>
					{one.verdict === 'unsuitable' ? '' : `${place}. `}
					{one.name}, {sizeWords(one.size)}
				</Typography>
				<Chip size="small" color={colour} label={words} />
				<Typography variant="body2" color="text.secondary">
					{termWords(one.sole)}
				</Typography>
				<Box sx={{ flexGrow: 1 }} />
				{(one.verdict !== 'unsuitable' || marked) && (
					<FormControlLabel
						label="To try"
						control={
							<Checkbox
								checked={marked}
								disabled={!marked && full}
								slotProps={{ input: { 'aria-label': `To try: ${one.name}` } }}
								onChange={(event) => {
									const on = event.target.checked
									change((now) => setMark(now, 'model', one.id, on ? modelWords(one) : undefined))
								}}
							/>
						}
					/>
				)}
			</Box>
			<Box
				component="dl"
				sx={{ m: 0, display: 'flex', flexWrap: 'wrap', columnGap: 4, rowGap: 0.5 }}
			>
				{numbers.map(([name, value]) => (
					<Box key={name}>
						<Typography component="dt" variant="body2" color="text.secondary">
							{name}
						</Typography>
						<Typography component="dd" sx={{ m: 0, fontVariantNumeric: 'tabular-nums' }}>
							{value}
						</Typography>
					</Box>
				))}
			</Box>
			{told.length > 0 && (
				<Typography variant="body2">
					{one.stops.length > 0 ? 'Stopped: ' : 'Against: '}
					{told.join(' ')}
					{one.stops.length === 0 && one.against.length > told.length
						? ` And ${one.against.length - told.length} more.`
						: ''}
				</Typography>
			)}
			{one.wouldChange.length > 0 && (
				<Box>
					<Typography variant="body2" sx={{ fontWeight: 600 }}>
						What would change this
					</Typography>
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{one.wouldChange.map((each) => (
							<Typography component="li" variant="body2" key={each}>
								{each}
							</Typography>
						))}
					</Box>
				</Box>
			)}
			<Button
				sx={{ justifySelf: 'start' }}
				variant="text"
				aria-expanded={open}
				aria-label={`Reasons and sole of ${one.name}`}
				onClick={() => setOpen(!open)}
			>
				Reasons and sole
			</Button>
			<Collapse in={open} unmountOnExit>
				<Stack spacing={1.5}>
					<Reasons title="Stopped by" rows={one.stops} />
					<Reasons title="For" rows={one.for} />
					<Reasons title="Against" rows={one.against} />
					{one.unknown.length > 0 && (
						<Typography variant="body2">
							Sought, but not recorded of this model: {one.unknown.join(', ')}.
						</Typography>
					)}
					<Soles one={one} model={model} assessment={assessment} visit={draft.visit} />
				</Stack>
			</Collapse>
		</Paper>
	)
}
/** Marks whose model or size is no longer what the match says. */
function Stale({
	draft,
	change,
	ranked,
}: Pick<StepProps, 'draft' | 'change'> & { ranked: readonly RankedModel[] }) {
	const stale = marksOf(draft, 'model').flatMap((line) => {
		const id = line.findingId.slice('model.'.length)
		const now = ranked.find((one) => one.id === id)
		if (now && now.verdict !== 'unsuitable' && modelWords(now) === line.says) return []
		return [
			{
				id,
				says: line.says ?? id,
				now: now && now.verdict !== 'unsuitable' ? modelWords(now) : undefined,
			},
		]
	})
	return (
		<>
			{stale.map((one) => (
				<Alert
					key={one.id}
					severity="warning"
					action={
						<>
							{one.now && (
								<Button
									color="inherit"
									onClick={() => change((draft) => setMark(draft, 'model', one.id, one.now))}
								>
									Use the new size
								</Button>
							)}
							<Button
								color="inherit"
								onClick={() => change((draft) => setMark(draft, 'model', one.id, undefined))}
							>
								Take off
							</Button>
						</>
					}
				>
					<AlertTitle>Marked to try: {one.says}</AlertTitle>
					{one.now
						? `With the measures as they stand it is ${one.now}.`
						: 'With the measures and the shelf as they stand it is not proposed any more.'}
				</Alert>
			))}
		</>
	)
}
export function ShelfMatch({
	draft,
	change,
	assessment,
	shelf,
}: StepProps & { shelf: Shelf | undefined }) {
	const id = useId()
	const [all, setAll] = useState(false)
	const section = useRef<HTMLElement>(null)
	// the button goes: the focus moves on to the first model that came
	useEffect(() => {
		if (all) section.current?.querySelectorAll<HTMLElement>('li h3[tabindex]')[first]?.focus()
	}, [all])
	if (!assessment) return null
	const { ranked } = assessment.footwear
	const open = ranked.filter((one) => one.verdict !== 'unsuitable')
	const stopped = ranked.filter((one) => one.verdict === 'unsuitable')
	const marked = marksOf(draft, 'model').length
	const full = marked >= mostModels
	const shownOpen = all ? open : open.slice(0, first)
	const hidden = ranked.length - shownOpen.length - (all ? stopped.length : 0)
	const card = (one: RankedModel, place: number) => (
		<Card
			key={one.id}
			one={one}
			place={place}
			model={shelf?.models.find((model) => model.id === one.id)}
			open={false}
			full={full}
			draft={draft}
			change={change}
			assessment={assessment}
		/>
	)
	const list = { m: 0, p: 0, listStyle: 'none', display: 'grid', gap: 1.5 } as const
	return (
		<Box component="section" ref={section} aria-labelledby={id}>
			<Typography variant="h2" id={id} sx={{ mb: 1 }}>
				On the shelf
			</Typography>
			<Stack spacing={2}>
				<Stale draft={draft} change={change} ranked={ranked} />
				{!shelf && (
					<Typography color="text.secondary">
						The clinic has no shelf yet. <Link href="#/shelf">Open Shelf</Link> to add models or
						take in a table; they are then matched here.
					</Typography>
				)}
				{shelf && ranked.length === 0 && (
					<Typography color="text.secondary">
						Nothing is matched:{' '}
						{assessment.sizing.fitLengthMm === undefined
							? 'measure the length of both feet first.'
							: 'the shelf holds no model on sale.'}
					</Typography>
				)}
				{ranked.length > 0 && (
					<>
						<Typography>
							{open.length} of {ranked.length} models pass,{' '}
							{open.filter((one) => one.verdict === 'with-changes').length} of them with changes.
							The number behind a reason is its share in the order: a smaller sum stands first. It
							is no measure of quality. Mark up to {mostModels} to try; the report prints them.
						</Typography>
						<Typography role="status" sx={{ fontWeight: 600 }}>
							{marked} of {mostModels} marked to try.{full ? ' Take one off to mark another.' : ''}
						</Typography>
						<Box component="ol" aria-label="Models that pass" sx={list}>
							{shownOpen.map((one, at) => card(one, at + 1))}
						</Box>
						{open.length === 0 && (
							<Alert severity="warning">
								No model of the shelf passes for this player. The reasons stand below.
							</Alert>
						)}
						{(all || open.length === 0) && stopped.length > 0 && (
							<>
								<Typography variant="h3">Stopped</Typography>
								<Box component="ul" aria-label="Models that are stopped" sx={list}>
									{stopped.map((one) => card(one, 0))}
								</Box>
							</>
						)}
						{hidden > 0 && open.length > 0 && (
							<Button
								variant="outlined"
								sx={{ alignSelf: 'flex-start' }}
								onClick={() => setAll(true)}
							>
								Show all {ranked.length}, with the {stopped.length} stopped
							</Button>
						)}
					</>
				)}
			</Stack>
		</Box>
	)
}
