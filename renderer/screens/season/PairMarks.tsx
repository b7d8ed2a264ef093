/** The pairs as our own marks, to be dragged onto a session; how far each is worn, and until when. */
import { Box } from '@mui/material'
import type { Plan, PlanPair } from '../../../shared/engine/season/plan-file.ts'
import { rounded } from '../../../shared/engine/visit/sides.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { clinicProtocol as protocol } from '../../parts/clinicProtocol.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Panel } from '../../parts/panels.tsx'
import { restsOn } from '../../parts/Workings.tsx'
import type { Pairs } from './gridWords.ts'
import { leastKey, momentsOf } from './moments.ts'
import { PairBadge } from './PairBadge.tsx'
import { dragPair } from './useGridWalk.ts'

interface PairMarksProps {
	pairs: Pairs
	plan: Plan | undefined
	/** Whether the player's feet still grow: the least toe room is another then. */
	young: boolean
}
export function PairMarks({ pairs, plan, young }: PairMarksProps) {
	const byLetter = pairs.toSorted((left, right) => (left.letter < right.letter ? -1 : 1))
	return (
		<Panel named title="Pairs">
			<Box component="ul" aria-label="Pairs" sx={{ m: 0, mt: 1, p: 0, listStyle: 'none' }}>
				{byLetter.map((pair) => (
					<Box component="li" key={pair.id} sx={{ display: 'flex', gap: 1, mb: 1 }}>
						<Box
							component="span"
							draggable
							title={`Drag onto a session to pin ${pair.letter}`}
							onDragStart={(event: React.DragEvent) => dragPair(event, pair.id)}
							sx={{ cursor: 'grab', alignSelf: 'start' }}
						>
							<PairBadge letter={pair.letter} />
						</Box>
						<Box>
							{pair.name}
							{pair.sole ? `, ${termWords(pair.sole)}` : ', sole not recorded'}
							<Course pair={plan?.pairs.find(({ id }) => id === pair.id)} />
						</Box>
					</Box>
				))}
				<Box component="li" sx={{ display: 'flex', gap: 1, alignItems: 'center' }}>
					<Box
						component="span"
						draggable
						title="Drag onto a session to take its pin off"
						onDragStart={(event: React.DragEvent) => dragPair(event, '')}
						sx={{
							cursor: 'grab',
							border: 1.5,
							borderStyle: 'dashed',
							borderRadius: 0.75,
							px: 0.75,
						}}
					>
						no pin
					</Box>
					takes a pin off
				</Box>
			</Box>
			{plan && <Dates plan={plan} young={young} />}
		</Panel>
	)
}
/** How far it is worn at the end, and its toe room from the first to the last month. */
function Course({ pair }: { pair: PlanPair | undefined }) {
	if (!pair) return null
	const [first, last] = [pair.toeRoom?.[0], pair.toeRoom?.at(-1)]
	return (
		<Box sx={{ fontSize: '0.85rem', color: 'text.secondary' }}>
			worn {rounded(100 * pair.wearFraction, 0)} % at the end
			{first && last
				? `; toe room ${rounded(first.toeRoomMm, 0)} mm now, ${rounded(last.lowMm, 0)} to ` +
					`${rounded(last.highMm, 0)} mm at the end`
				: ''}
		</Box>
	)
}
/** What comes when, and the limits that it rests on. */
function Dates({ plan, young }: { plan: Plan; young: boolean }) {
	const moments = momentsOf(plan)
	const leastKeys = new Set(
		plan.pairs.filter((pair) => pair.toeRoom).map((pair) => leastKey(pair, young)),
	)
	return (
		<>
			{moments.length > 0 && (
				<Box
					component="ul"
					aria-label="Dates of the season"
					sx={{ m: 0, mt: 1, pl: 2.5, fontSize: '0.9rem' }}
				>
					{moments.map(({ date, says }) => (
						<li key={`${date} ${says}`}>
							<strong>{dayInWords(date)}</strong>: {says}
						</li>
					))}
				</Box>
			)}
			<Box component="details" sx={{ mt: 1, fontSize: '0.85rem' }}>
				<summary>What the dates rest on</summary>
				{restsOn(protocol.basis('replacement window', 'season.checkShare'))}{' '}
				{[...leastKeys].map((key) => restsOn(protocol.basis('least toe room', key))).join(' ')}
			</Box>
		</>
	)
}
