/**
 * One scale with its lanes one below the other. The words beside a lane say what the drawing shows,
 * so that the drawing itself is left out for those who do not see it. Bands are told by words and
 * edges, never by colour alone.
 */
import { Box, Typography } from '@mui/material'
import { percentAt, type Strip, type StripLane, type StripLimit, type StripZone } from '../strip.ts'

const at = (strip: Strip, value: number): string => `${percentAt(strip, value)}%`
const span = (strip: Strip, from: number, to: number) => ({
	left: at(strip, from),
	width: `${percentAt(strip, to) - percentAt(strip, from)}%`,
})
const full = { position: 'absolute', top: 0, bottom: 0 } as const

function Zone({ strip, zone }: { strip: Strip; zone: StripZone }) {
	return (
		<Box
			sx={{
				...full,
				...span(strip, zone.from, zone.to),
				bgcolor: zone.lit ? 'action.selected' : 'transparent',
				borderLeft: 1,
				borderRight: 1,
				borderColor: 'divider',
			}}
		/>
	)
}
/** The limit, and round it what measuring error leaves open. */
function Limit({ strip, limit: { value, error } }: { strip: Strip; limit: StripLimit }) {
	return (
		<>
			{error !== undefined && (
				<Box
					sx={{
						...full,
						...span(strip, value - error, value + error),
						borderLeft: '1px dotted',
						borderRight: '1px dotted',
						borderColor: 'warning.main',
						bgcolor: 'color-mix(in srgb, var(--mui-palette-warning-main) 18%, transparent)',
					}}
				/>
			)}
			<Box sx={{ ...full, left: at(strip, value), borderLeft: 2, borderColor: 'warning.main' }} />
		</>
	)
}
function Marks({ strip, marks }: { strip: Strip; marks: StripLane['marks'] }) {
	const values = marks.map(({ value }) => value)
	const line = { position: 'absolute', top: '50%', borderColor: 'text.primary' } as const
	return (
		<>
			{marks.length > 1 && (
				<Box
					sx={{ ...line, ...span(strip, Math.min(...values), Math.max(...values)), borderTop: 2 }}
				/>
			)}
			{marks.map(({ value, filled, low, high }) => (
				<Box key={`${value} ${filled}`}>
					{low !== undefined && high !== undefined && (
						<Box
							sx={{
								...line,
								...span(strip, low, high),
								height: '0.6rem',
								mt: '-0.3rem',
								borderTop: 0,
								borderLeft: 2,
								borderRight: 2,
								'&::after': {
									content: '""',
									display: 'block',
									height: '50%',
									borderBottom: '2px solid',
								},
							}}
						/>
					)}
					<Box
						sx={{
							position: 'absolute',
							top: '50%',
							left: at(strip, value),
							width: '0.85rem',
							height: '0.85rem',
							transform: 'translate(-50%, -50%)',
							borderRadius: '50%',
							border: '2px solid',
							borderColor: 'text.primary',
							bgcolor: filled ? 'text.primary' : 'background.default',
							'@media (forced-colors: active)': filled
								? { bgcolor: 'CanvasText', forcedColorAdjust: 'none' }
								: {},
						}}
					/>
				</Box>
			))}
		</>
	)
}
/** The names of the bands, under their middle. */
function ZoneNames({ strip }: { strip: Strip }) {
	const named = strip.zones.filter(({ name }) => name !== '')
	if (named.length === 0) return null
	return (
		<Box sx={{ gridColumn: 2, position: 'relative', height: '1.2rem' }}>
			{named.map(({ from, to, name, lit }) => (
				<Typography
					key={name}
					variant="body2"
					sx={{
						position: 'absolute',
						...span(strip, from, to),
						textAlign: 'center',
						fontSize: '0.75rem',
						whiteSpace: 'nowrap',
						overflow: 'hidden',
						textOverflow: 'ellipsis',
						fontWeight: lit ? 600 : 400,
						color: lit ? 'text.primary' : 'text.secondary',
					}}
				>
					{name}
				</Typography>
			))}
		</Box>
	)
}
function Lane({ strip, lane }: { strip: Strip; lane: StripLane }) {
	return (
		<>
			<Typography variant="body2" component="span" sx={{ fontWeight: 600 }}>
				{lane.name}
			</Typography>
			<Box
				aria-hidden
				sx={{
					position: 'relative',
					height: '1.6rem',
					overflow: 'hidden',
					bgcolor: 'background.paper',
					'&::before': {
						content: '""',
						position: 'absolute',
						left: 0,
						right: 0,
						top: '50%',
						borderTop: '1px solid var(--mui-palette-divider)',
					},
				}}
			>
				{strip.zones.map((zone) => (
					<Zone key={`${zone.from}`} strip={strip} zone={zone} />
				))}
				{strip.limits.map((limit) => (
					<Limit key={limit.value} strip={strip} limit={limit} />
				))}
				<Marks strip={strip} marks={lane.marks} />
			</Box>
			<Typography
				variant="body2"
				component="span"
				sx={{ textAlign: 'right', fontVariantNumeric: 'tabular-nums' }}
			>
				{lane.says}
			</Typography>
		</>
	)
}
export function StripDrawing({ strip }: { strip: Strip }) {
	return (
		<Box component="figure" sx={{ m: 0, minWidth: 0 }}>
			<Typography component="figcaption" variant="body2" sx={{ fontWeight: 600 }}>
				{strip.title}
				{strip.aside && (
					<Box component="span" sx={{ fontWeight: 400, color: 'text.secondary' }}>
						{`: ${strip.aside}`}
					</Box>
				)}
			</Typography>
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'auto minmax(6rem, 1fr) minmax(4.5rem, auto)',
					columnGap: 1,
					alignItems: 'center',
					mt: 0.25,
				}}
			>
				{strip.lanes.map((lane) => (
					<Lane key={lane.name} strip={strip} lane={lane} />
				))}
				<ZoneNames strip={strip} />
			</Box>
			<Typography
				variant="body2"
				color="text.secondary"
				sx={{ fontSize: '0.8rem', fontVariantNumeric: 'tabular-nums' }}
			>
				{strip.note}
			</Typography>
		</Box>
	)
}
