/** One session of the list: when, what, on which ground, in which pair and why. */
import { Box } from '@mui/material'
import { memo, type ReactNode } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { shortDayInWords, weekdayName } from '../../../shared/engine/plain/days.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import type { Line } from './edits.ts'
import { PairBadge } from './PairBadge.tsx'

export type Pairs = OutputOf<'season.open'>['pairs']
const statusWords = { cancelled: 'called off', bye: 'bye', injured: 'injured' } as const
const sentence = (words: readonly string[]): string => words.map(capital).join('. ')
const letterOf = (pairs: Pairs, id: string): string | undefined =>
	pairs.find((pair) => pair.id === id)?.letter
/** Ids of the pairs that were worn, or are planned to be: one, or one for each part. */
function wornPairs({ session, plan, past }: Line): readonly string[] {
	if (past && session.worn !== undefined) return [session.worn]
	if (plan?.parts) return plan.parts.map(({ pair }) => pair)
	return plan?.pair === undefined ? [] : [plan.pair]
}

interface SessionRowProps {
	line: Line
	index: number
	pairs: Pairs
	selected: boolean
	pick: (index: number) => void
}
export const SessionRow = memo(function SessionRow(props: SessionRowProps) {
	const { line, index, pairs, selected, pick } = props
	const { session, plan, past } = line
	return (
		<Box
			component="tr"
			data-row={index}
			tabIndex={selected ? 0 : -1}
			aria-selected={selected}
			onFocus={() => pick(index)}
			onClick={(event: { currentTarget: HTMLElement }) => event.currentTarget.focus()}
			sx={{
				cursor: 'default',
				scrollMarginTop: '48px',
				scrollMarginBottom: '12px',
				color: past || session.status ? 'text.secondary' : undefined,
				bgcolor: selected ? 'action.selected' : undefined,
				'&:focus-visible': { outlineOffset: -3 },
				'& td': { px: 1, py: 0.75, borderBottom: 1, borderColor: 'divider', verticalAlign: 'top' },
			}}
		>
			<OneLine>
				{weekdayName(session.date).slice(0, 3)} {shortDayInWords(session.date)}
			</OneLine>
			<OneLine>{session.start ?? '-'}</OneLine>
			<Box component="td" sx={{ minWidth: 90 }}>
				{session.kind}
				{session.title ? `, ${session.title}` : ''}
			</Box>
			<OneLine>{termWords(session.surface)}</OneLine>
			<td>{session.ground ?? 'dry'}</td>
			<OneLine>
				<Wears line={line} pairs={pairs} />
			</OneLine>
			<Box component="td" sx={{ fontSize: '0.88rem', overflowWrap: 'anywhere' }}>
				{plan && plan.reasons.length > 0 && sentence(plan.reasons)}
				{plan?.unmet.map((wish) => (
					<Box key={wish} component="strong" sx={{ display: 'block', color: 'warning.main' }}>
						Not met: {wish}
					</Box>
				))}
			</Box>
			<Box component="td" sx={{ minWidth: 84 }}>
				{session.pinned !== undefined && pinWords(pairs, session.pinned)}
			</Box>
		</Box>
	)
})

function OneLine({ children }: { children: ReactNode }) {
	return (
		<Box component="td" sx={{ whiteSpace: 'nowrap' }}>
			{children}
		</Box>
	)
}
function Wears({ line, pairs }: Pick<SessionRowProps, 'line' | 'pairs'>) {
	const { status } = line.session
	if (status) return statusWords[status]
	const worn = wornPairs(line)
	if (worn.length === 0) return line.plan ? 'none' : 'not planned'
	return (
		<Box component="span" sx={{ display: 'inline-flex', gap: 0.5 }}>
			{worn.map((id) => (
				<span key={id}>
					<PairBadge letter={letterOf(pairs, id) ?? '?'} />
				</span>
			))}
		</Box>
	)
}
function pinWords(pairs: Pairs, id: string): string {
	const letter = letterOf(pairs, id)
	return letter === undefined ? 'pinned, pair unknown' : `pinned ${letter}`
}
