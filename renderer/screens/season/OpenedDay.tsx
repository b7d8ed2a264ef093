/** A day opened: why this pair, what hindered the others, the pin; moved or called off. */
import { Box, Button, Paper, Typography } from '@mui/material'
import type { KeyboardEvent } from 'react'
import { useEffect, useRef } from 'react'
import type { PlanSession } from '../../../shared/engine/season/plan-file.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { AddSession } from './AddSession.tsx'
import type { Line } from './edits.ts'
import { fullDay, letterOf, lineWords, type Pairs } from './gridWords.ts'
import type { Edit } from './options.ts'
import { PairBadge } from './PairBadge.tsx'
import { SessionEditor } from './SessionEditor.tsx'

interface OpenedDayProps extends Edit {
	day: string
	line: Line | undefined
	pairs: Pairs
	pin: (line: Line, pair: Pairs[number] | undefined) => void
	close: () => void
}
export function OpenedDay({ day, line, pairs, pin, close, season, change }: OpenedDayProps) {
	const box = useRef<HTMLHeadingElement>(null)
	// the words first: the form below is one more step away
	// biome-ignore lint/correctness/useExhaustiveDependencies: another session is read anew
	useEffect(() => box.current?.focus(), [line?.session.id, day])
	return (
		<Paper
			component="section"
			variant="outlined"
			aria-labelledby="opened-day"
			onKeyDown={(event: KeyboardEvent) => event.key === 'Escape' && close()}
			sx={{ p: 1.5, borderColor: 'primary.main' }}
		>
			<Box sx={{ display: 'flex', alignItems: 'start', gap: 1 }}>
				<Typography variant="h2" id="opened-day" ref={box} tabIndex={-1} sx={{ flexGrow: 1 }}>
					{fullDay(day)}
				</Typography>
				<Button size="small" onClick={close}>
					Close
				</Button>
			</Box>
			{line ? (
				<>
					<Typography sx={{ mt: 0.5 }}>{lineWords(line, pairs).replace(/^[^:]*: /, '')}</Typography>
					{line.plan && <Why plan={line.plan} />}
					<Pins line={line} pairs={pairs} pin={pin} />
					<SessionEditor
						key={line.session.id}
						line={line}
						pairs={pairs}
						season={season}
						change={change}
						done={close}
					/>
				</>
			) : (
				<Typography sx={{ mt: 0.5 }}>No session on this day.</Typography>
			)}
			<AddSession key={day} season={season} change={change} date={day} />
		</Paper>
	)
}

/** Reasons that speak of another pair; older plans do not say which do. */
const ofOthers = ['season.hindered', 'season.better-elsewhere', 'season.shares-wear']
function Why({ plan: { reasons, reasonCodes, unmet } }: { plan: PlanSession }) {
	const isOfOthers = (_: string, at: number) => ofOthers.includes(reasonCodes?.[at]?.code ?? '')
	const others = reasons.filter(isOfOthers)
	const own = reasons.filter((says, at) => !isOfOthers(says, at))
	return (
		<>
			<Said title="Why this pair" lines={own} />
			<Said title="The other pairs" lines={others} />
			<Said title="Not met" lines={unmet} />
		</>
	)
}
function Said({ title, lines }: { title: string; lines: readonly string[] }) {
	if (lines.length === 0) return null
	return (
		<>
			<Typography variant="h3" sx={{ mt: 1 }}>
				{title}
			</Typography>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{lines.map((says) => (
					<li key={says}>{capital(says)}</li>
				))}
			</Box>
		</>
	)
}

function Pins({ line, pairs, pin }: Pick<OpenedDayProps, 'pairs' | 'pin'> & { line: Line }) {
	const { pinned, status } = line.session
	if (line.past || status) return null
	return (
		<Box
			role="group"
			aria-label="Pin a pair"
			sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, mt: 1 }}
		>
			{pairs
				.filter(({ sole }) => sole !== undefined)
				.map((pair) => (
					<Button
						key={pair.id}
						variant="outlined"
						size="small"
						aria-pressed={pair.id === pinned}
						aria-label={`Pin ${pair.letter}, ${pair.name}`}
						onClick={() => pin(line, pair)}
					>
						<PairBadge letter={pair.letter} />
						{pair.id === pinned ? <Box sx={{ ml: 0.75 }}>pinned</Box> : null}
					</Button>
				))}
			{pinned !== undefined && (
				<Button size="small" onClick={() => pin(line, undefined)}>
					Take the pin off {letterOf(pairs, pinned)}
				</Button>
			)}
		</Box>
	)
}
