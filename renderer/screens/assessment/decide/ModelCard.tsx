/** One model of the shelf: its size, margins and reasons, whether it is marked to try, its sole. */
import {
	Box,
	Button,
	Checkbox,
	Chip,
	Collapse,
	FormControlLabel,
	Paper,
	Stack,
	Typography,
} from '@mui/material'
import { useState } from 'react'
import type { Assessment, RankedModel } from '../../../../shared/engine/findings/assessment.ts'
import type { Model } from '../../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../../shared/engine/visit/terms.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { sizeWords } from '../../../../shared/engine/words/en/sizes.ts'
import { ModelReasons, ModelSoles } from './ModelReasons.tsx'

const verdicts: Record<
	RankedModel['verdict'],
	{ words: string; colour: 'success' | 'warning' | 'error' }
> = {
	suits: { words: 'Suits', colour: 'success' },
	'with-changes': { words: 'With changes', colour: 'warning' },
	unsuitable: { words: 'Stopped', colour: 'error' },
}
interface MarginWords {
	none: string
	over: string
	under: string
}
const widthWords: MarginWords = {
	none: 'foot not measured',
	over: 'over the wider foot',
	under: 'narrower than the wider foot',
}
const depthWords: MarginWords = { none: 'not measured', over: 'to spare', under: 'too little' }
function margin(mm: number | undefined, { none, over, under }: MarginWords): string {
	if (mm === undefined) return none
	return mm < 0 ? `${-mm} mm ${under}` : `${mm} mm ${over}`
}

/** The figures of a model in this size, each under its name. */
function figuresOf(ranked: RankedModel): { name: string; value: string }[] {
	const { toeRoomMm, widthMarginMm, depthMarginMm, offsetMm, price } = ranked
	const figures = [
		{ name: 'Toe room', value: `${toeRoomMm} mm` },
		{ name: 'Width at the ball', value: margin(widthMarginMm, widthWords) },
		{ name: 'Depth over the toes', value: margin(depthMarginMm, depthWords) },
		{ name: 'Offset', value: offsetMm === undefined ? 'not recorded' : `${offsetMm} mm` },
	]
	return price === undefined ? figures : [...figures, { name: 'Price', value: String(price) }]
}

/** Why a model is stopped, or the first two reasons against it; empty where there are none. */
function mainReasons({ stops, against }: RankedModel): string {
	if (stops.length > 0) return `Stopped: ${stops.map((stop) => stop.says).join(' ')}`
	if (against.length === 0) return ''
	const told = against.slice(0, 2).map((reason) => reason.says)
	const more = against.length - told.length
	return `Against: ${told.join(' ')}${more > 0 ? ` And ${more} more.` : ''}`
}

interface ModelCardProps {
	ranked: RankedModel
	/** Place in the order of those that pass, where that order is shown. */
	place?: number
	/** As it stands on the shelf; its sole is drawn from it. */
	model: Model | undefined
	/** Whether it is to try. */
	marked: boolean
	/** As many are to try as may be. */
	full: boolean
	mark: (on: boolean) => void
	visit: Visit
	assessment: Assessment
}
export function ModelCard(props: ModelCardProps) {
	const { ranked, model, marked, visit, assessment } = props
	const [open, setOpen] = useState(false)
	const told = mainReasons(ranked)
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
			<Head {...props} />
			<Figures ranked={ranked} />
			{told && <Typography variant="body2">{told}</Typography>}
			<WouldChange ranked={ranked} />
			<Button
				sx={{ justifySelf: 'start' }}
				variant="text"
				aria-expanded={open}
				aria-label={`Reasons and sole of ${ranked.name}`}
				onClick={() => setOpen(!open)}
			>
				Reasons and sole
			</Button>
			<Collapse in={open} unmountOnExit>
				<Stack spacing={1.5}>
					<ModelReasons ranked={ranked} />
					<ModelSoles ranked={ranked} model={model} assessment={assessment} visit={visit} />
				</Stack>
			</Collapse>
		</Paper>
	)
}

function Head({ ranked, place, full, mark, marked }: ModelCardProps) {
	const { words, colour } = verdicts[ranked.verdict]
	const stopped = ranked.verdict === 'unsuitable'
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1.5, alignItems: 'center' }}>
			<Typography variant="h3" tabIndex={-1}>
				{place === undefined ? '' : `${place}. `}
				{ranked.name}, {sizeWords(ranked.size)}
			</Typography>
			<Chip size="small" color={colour} label={words} />
			<Typography variant="body2" color="text.secondary">
				{termWords(ranked.sole)}
			</Typography>
			<Box sx={{ flexGrow: 1 }} />
			{(!stopped || marked) && (
				<FormControlLabel
					label="To try"
					control={
						<Checkbox
							checked={marked}
							disabled={!marked && full}
							slotProps={{ input: { 'aria-label': `To try: ${ranked.name}` } }}
							onChange={(event) => mark(event.target.checked)}
						/>
					}
				/>
			)}
		</Box>
	)
}

function Figures({ ranked }: { ranked: RankedModel }) {
	return (
		<Box component="dl" sx={{ m: 0, display: 'flex', flexWrap: 'wrap', columnGap: 4, rowGap: 0.5 }}>
			{figuresOf(ranked).map(({ name, value }) => (
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
	)
}

function WouldChange({ ranked }: { ranked: RankedModel }) {
	if (ranked.wouldChange.length === 0) return null
	return (
		<Box>
			<Typography variant="body2" sx={{ fontWeight: 600 }}>
				What would change this
			</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{ranked.wouldChange.map((change) => (
					<Typography component="li" variant="body2" key={change}>
						{change}
					</Typography>
				))}
			</Box>
		</Box>
	)
}
