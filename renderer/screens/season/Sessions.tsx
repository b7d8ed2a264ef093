/**
 * Every session as a table that is walked with the arrow keys: a letter pins a pair, Delete frees
 * it, Enter opens the session.
 */
import { Box, Paper, Typography } from '@mui/material'
import type { KeyboardEvent, RefObject } from 'react'
import { AddSession } from './AddSession.tsx'
import type { Line } from './edits.ts'
import type { Edit } from './options.ts'
import { SessionEditor } from './SessionEditor.tsx'
import { type Pairs, SessionRow } from './SessionRow.tsx'
import { useSessionWalk } from './useSessionWalk.ts'

const heads = ['Date', 'Start', 'Kind', 'Surface', 'Ground', 'Pair', 'Why', 'Pin']

export interface SessionsProps extends Edit {
	lines: readonly Line[]
	pairs: Pairs
}
export function Sessions(props: SessionsProps) {
	const { lines, pairs, season, change } = props
	const { selected, pick, open, close, press, body } = useSessionWalk(props)
	const line = lines[selected]
	return (
		<Paper component="section" variant="outlined" aria-labelledby="sessions" sx={{ p: 2 }}>
			<Typography variant="h2" id="sessions">
				Sessions
			</Typography>
			<Typography color="text.secondary" variant="body2" id="sessions-keys" sx={{ mt: 0.5 }}>
				Arrow keys walk the list. A pair's letter pins it to the session, Delete takes the pin off,
				Enter opens the session to move it or call it off.
			</Typography>
			{open && line && (
				<SessionEditor
					key={line.session.id}
					line={line}
					pairs={pairs}
					season={season}
					change={change}
					done={close}
				/>
			)}
			{lines.length === 0 ? (
				<Typography sx={{ mt: 1 }}>
					No session yet. Add a weekly session, import a list, or add one below.
				</Typography>
			) : (
				<SessionTable {...{ lines, pairs, selected, pick, press, body }} />
			)}
			<AddSession season={season} change={change} />
		</Paper>
	)
}

interface SessionTableProps extends Pick<SessionsProps, 'lines' | 'pairs'> {
	selected: number
	pick: (index: number) => void
	press: (event: KeyboardEvent) => void
	body: RefObject<HTMLTableSectionElement | null>
}
function SessionTable({ lines, pairs, selected, pick, press, body }: SessionTableProps) {
	return (
		<Box
			sx={{
				maxHeight: '70vh',
				overflow: 'auto',
				mt: 1.5,
				border: 1,
				borderColor: 'divider',
				borderRadius: 1,
			}}
		>
			<Box
				component="table"
				role="grid"
				aria-labelledby="sessions"
				aria-describedby="sessions-keys"
				sx={{
					borderCollapse: 'separate',
					borderSpacing: 0,
					width: '100%',
					fontSize: '0.93rem',
					fontVariantNumeric: 'tabular-nums',
					'& th': {
						position: 'sticky',
						top: 0,
						zIndex: 1,
						bgcolor: 'background.paper',
						textAlign: 'left',
						px: 1,
						py: 0.75,
						borderBottom: 2,
						borderColor: 'divider',
					},
				}}
			>
				<thead>
					<tr>
						{heads.map((head) => (
							<th key={head} scope="col">
								{head}
							</th>
						))}
					</tr>
				</thead>
				<tbody ref={body} onKeyDown={press}>
					{lines.map((line, index) => (
						<SessionRow
							key={line.session.id}
							line={line}
							index={index}
							pairs={pairs}
							selected={index === selected}
							pick={pick}
						/>
					))}
				</tbody>
			</Box>
		</Box>
	)
}
