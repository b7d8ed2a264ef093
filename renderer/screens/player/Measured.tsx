/** The pairs a player owns, and the sizes from visit to visit. */
import {
	Box,
	Table,
	TableBody,
	TableCell,
	type TableCellProps,
	TableHead,
	TableRow,
	Typography,
} from '@mui/material'
import type { ReactNode } from 'react'
import type { SummaryPair, SummarySizes } from '../../../shared/desk/players/summary.ts'
import { shown } from '../../../shared/engine/words/words.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Empty } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { scrollsX } from '../../parts/scrollsX.ts'

type Verdict = NonNullable<SummaryPair['verdict']>
const verdicts: Readonly<Record<Verdict, string>> = {
	keep: 'Keep',
	modify: 'Change',
	'training-only': 'Training only',
	replace: 'Replace',
	'stop-wearing': 'Stop wearing',
}
/** What asks for something to be done stands out, by weight as well. */
const tones: Readonly<Partial<Record<Verdict, string>>> = {
	replace: 'warning.main',
	'stop-wearing': 'error.main',
}
/** In the column of the day: what it is the day of. */
const untilWords = ({ verdict, until }: SummaryPair): string => {
	if (until === undefined) return ''
	return verdict === 'replace' ? ` by ${dayInWords(until)}` : `, room until ${dayInWords(until)}`
}
const Figure = (props: TableCellProps) => (
	<TableCell align="right" {...props} sx={{ fontVariantNumeric: 'tabular-nums' }} />
)
function Figures({ label, children }: { label: string; children: ReactNode }) {
	return (
		<Box sx={scrollsX} tabIndex={0} role="region" aria-label={label}>
			<Table
				size="small"
				aria-label={label}
				sx={{ '& td, & th': { pl: 0, py: 0.75, '&:last-of-type': { pr: 0 } } }}
			>
				{children}
			</Table>
		</Box>
	)
}
export function Pairs({ pairs, hasVisits }: { pairs: readonly SummaryPair[]; hasVisits: boolean }) {
	if (pairs.length === 0)
		return (
			<Panel named title="Pairs owned">
				<Empty
					says={
						hasVisits
							? 'No pair was recorded at the last visit.'
							: 'Each pair stands here with its room, what to do with it, and until when.'
					}
				/>
			</Panel>
		)
	return (
		<Panel named title="Pairs owned">
			<Figures label="Pairs owned">
				<TableHead>
					<TableRow>
						<TableCell>Pair</TableCell>
						<Figure>Worn, h</Figure>
						<Figure>Toe room, mm</Figure>
						<TableCell>What to do</TableCell>
					</TableRow>
				</TableHead>
				<TableBody>
					{pairs.map((pair, index) => (
						// biome-ignore lint/suspicious/noArrayIndexKey: two pairs may have one name
						<TableRow key={index}>
							<TableCell component="th" scope="row" sx={{ fontWeight: 400 }}>
								{pair.name}
							</TableCell>
							<Figure>{pair.hoursWorn}</Figure>
							<Figure>{pair.toeRoomMm === undefined ? '' : shown(pair.toeRoomMm)}</Figure>
							<TableCell>
								<Box
									component="span"
									sx={{ fontWeight: 600, color: pair.verdict && tones[pair.verdict] }}
								>
									{pair.verdict ? verdicts[pair.verdict] : 'Not settled'}
								</Box>
								{untilWords(pair)}
							</TableCell>
						</TableRow>
					))}
				</TableBody>
			</Figures>
		</Panel>
	)
}
const length = (mm: number | undefined): string => (mm === undefined ? '' : shown(mm))
/** One visit says its lengths in a line; from two on they stand beside one another. */
export function Sizes({ sizes }: { sizes: readonly SummarySizes[] }) {
	const [last] = sizes
	if (!last)
		return (
			<Panel named title="Sizes over time">
				<Empty says="Foot lengths and inside length stand here once the feet are measured." />
			</Panel>
		)
	if (sizes.length === 1)
		return (
			<Panel named title="Sizes over time">
				<Typography>
					Measured once, {dayInWords(last.visitDate)}: left {length(last.leftMm) || 'not measured'},
					right {length(last.rightMm) || 'not measured'}, in mm. The next visit stands beside it.
				</Typography>
			</Panel>
		)
	return (
		<Panel named title="Sizes over time">
			<Figures label="Sizes over time">
				<TableHead>
					<TableRow>
						<TableCell>Visit</TableCell>
						<Figure>Left foot, mm</Figure>
						<Figure>Right foot, mm</Figure>
						<Figure>Inside length, mm</Figure>
					</TableRow>
				</TableHead>
				<TableBody>
					{sizes.map(({ visitDate, leftMm, rightMm, insideMm, isSwollen }, index) => (
						// biome-ignore lint/suspicious/noArrayIndexKey: two visits may be of one day
						<TableRow key={index}>
							<TableCell component="th" scope="row" sx={{ fontWeight: 400 }}>
								{dayInWords(visitDate)}
								{isSwollen ? ', swollen or sore: not to be bought by' : ''}
							</TableCell>
							<Figure>{length(leftMm)}</Figure>
							<Figure>{length(rightMm)}</Figure>
							<Figure>
								{insideMm && !isSwollen ? `${shown(insideMm.min)} to ${shown(insideMm.max)}` : ''}
							</Figure>
						</TableRow>
					))}
				</TableBody>
			</Figures>
		</Panel>
	)
}
