/** One day of the grid: each of its sessions as a button with the marks of what is worn. */
import { Box, type SxProps, type Theme } from '@mui/material'
import type { ReactNode } from 'react'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import type { Line } from './edits.ts'
import { fullDay, letterOf, lineWords, type Pairs, statusWords, wornPairs } from './gridWords.ts'
import { PairBadge } from './PairBadge.tsx'
import type { GridWalk } from './useGridWalk.ts'
import type { DayOfWeek, Place } from './weekGrid.ts'

interface DayCellProps {
	week: number
	day: number
	of: DayOfWeek
	pairs: Pairs
	walk: GridWalk['walk']
}
export function DayCell({ week, day, of, pairs, walk }: DayCellProps) {
	const { date, inside, lines } = of
	return (
		<Box component="td" role="gridcell" sx={inside ? undefined : { bgcolor: 'action.hover' }}>
			{lines.length === 0 ? (
				<Slot place={{ week, day, at: 0 }} name={`${fullDay(date)}: no session`} walk={walk} />
			) : (
				lines.map((line, at) => (
					<Slot
						key={line.session.id}
						place={{ week, day, at }}
						name={lineWords(line, pairs)}
						line={line}
						walk={walk}
					>
						<Marks line={line} pairs={pairs} />
					</Slot>
				))
			)}
		</Box>
	)
}

interface SlotProps {
	place: Place
	name: string
	line?: Line
	walk: GridWalk['walk']
	children?: ReactNode
}
/** A place that the keys reach. A session may take a dragged mark. */
function Slot({ place, name, line, walk, children }: SlotProps) {
	const chosen = walk.isChosen(place)
	const takes = line && !line.past && !line.session.status
	return (
		<Box
			component="button"
			type="button"
			data-place={walk.keyOf(place)}
			tabIndex={chosen ? 0 : -1}
			aria-label={name}
			aria-current={chosen ? 'true' : undefined}
			onFocus={() => walk.pick(place)}
			onClick={walk.openHere}
			{...(takes && {
				onDragOver: (event: React.DragEvent) => event.preventDefault(),
				onDrop: (event: React.DragEvent) => walk.drop(event, line),
			})}
			sx={slotLook(chosen, line?.past === true)}
		>
			{children}
		</Box>
	)
}
const slotLook = (chosen: boolean, past: boolean): SxProps<Theme> => ({
	display: 'flex',
	flexWrap: 'wrap',
	alignItems: 'center',
	columnGap: 0.75,
	rowGap: 0.25,
	width: '100%',
	minHeight: 44,
	px: 0.75,
	py: 0.5,
	border: 0,
	font: 'inherit',
	textAlign: 'left',
	cursor: 'pointer',
	color: past ? 'text.secondary' : 'text.primary',
	bgcolor: chosen ? 'action.selected' : 'transparent',
	// below the heads of page and table
	scrollMarginTop: 'calc(var(--frame-stays, 0rem) + 40px)',
	'&:focus-visible': { outlineOffset: -3 },
})

const small = { fontSize: '0.78rem', lineHeight: 1.2 } as const
function Marks({ line, pairs }: { line: Line; pairs: Pairs }) {
	const { start, kind, status, pinned } = line.session
	const unmet = !status && line.plan !== undefined && line.plan.unmet.length > 0
	return (
		<>
			{!status && <Worn line={line} pairs={pairs} />}
			{unmet && (
				<Box component="strong" sx={{ color: 'warning.main' }}>
					!
				</Box>
			)}
			{kind === 'match' && (
				<Box component="strong" sx={small}>
					match
				</Box>
			)}
			{pinned !== undefined && (
				<Box component="span" sx={small}>
					pinned {letterOf(pairs, pinned)}
				</Box>
			)}
			<Box component="span" sx={{ ...small, flexBasis: '100%' }}>
				{[start, status && statusWords[status]].filter(Boolean).join(' ')}{' '}
				{!status && <Ground line={line} />}
			</Box>
		</>
	)
}
function Ground({ line: { session } }: { line: Line }) {
	const { surface, ground = 'dry' } = session
	return (
		<Box component="span" sx={{ color: 'text.secondary' }}>
			{termWords(surface)}{' '}
			{ground !== 'dry' && (
				<Box component="strong" sx={{ color: 'text.primary' }}>
					{ground}
				</Box>
			)}
		</Box>
	)
}
function Worn({ line, pairs }: { line: Line; pairs: Pairs }) {
	const worn = wornPairs(line)
	if (worn.length === 0)
		return (
			<Box component="strong" sx={{ ...small, color: line.plan ? 'error.main' : undefined }}>
				{line.plan ? 'no pair' : 'not planned'}
			</Box>
		)
	return worn.map((id) => <PairBadge key={id} letter={letterOf(pairs, id)} />)
}
