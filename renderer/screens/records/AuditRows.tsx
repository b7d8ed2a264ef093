/** Rows of the audit trail, a page at a time. */
import { Box, Button, Link } from '@mui/material'
import { type ReactNode, useState } from 'react'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { AuditFunction } from '../../../shared/desk/records/audit.ts'
import { call } from '../../host.ts'
import { Trouble } from '../../parts/form.tsx'
import { Rows, timeWords } from '../../parts/panels.tsx'
import { useHostAction } from '../../query.ts'

/** Rows that are asked for at a time. */
export const onPage = 100
type Row = OutputOf<'audit.page'>['rows'][number]
const did: Record<AuditFunction, string> = {
	read: 'read',
	search: 'searched',
	create: 'made',
	update: 'changed',
	sign: 'signed',
	amend: 'amended',
	print: 'printed',
	export: 'took out',
	send: 'sent',
	unlock: 'unlocked',
	'unlock-failed': 'failed to unlock',
	lock: 'locked',
	switch: 'handed over',
	merge: 'joined',
	destroy: 'destroyed',
	backup: 'backed up',
	restore: 'restored',
	verify: 'checked',
	refused: 'was refused',
}
const outcomes: Record<Row['outcome'], string> = {
	done: 'done',
	refused: 'refused',
	failed: 'failed',
}
/**
 * A mark of 36 characters is shown by its first eight, enough to tell two apart; the saved table
 * has it whole.
 */
const short = (mark: string) => (/^[0-9a-f]{8}-[0-9a-f-]{27}$/.test(mark) ? mark.slice(0, 8) : mark)
/** A file, such as a backup, keeps its name. */
const kindWords = (kind: string) => (/\.\w+$/.test(kind) ? kind : kind.replaceAll('-', ' '))
function whatOf({ objectRef, playerId, purpose }: Row): ReactNode {
	const [kind = '', ...rest] = objectRef.split(':')
	const mark = rest.join(':').trim()
	const words =
		kind === 'query'
			? mark
				? `players named like “${mark}”`
				: 'the list of players'
			: [kindWords(kind), short(mark)].filter(Boolean).join(' ')
	const player =
		playerId && kind !== 'player' ? (
			<>
				{words ? ', ' : ''}
				<Link href={`#/players/${playerId}`}>player {short(playerId)}</Link>
			</>
		) : null
	return (
		<>
			{kind === 'player' && playerId ? (
				<Link href={`#/players/${playerId}`}>{words}</Link>
			) : (
				words || (player ? '' : 'the records')
			)}
			{player}
			{purpose && !/^\w+\.\w+$/.test(purpose) ? ` (${purpose})` : ''}
		</>
	)
}

interface AuditRowsProps {
	/** the first page */
	first: readonly Row[]
	/** what it was asked with */
	asked: InputOf<'audit.page'>
	/** the first page is on its way */
	asking: boolean
}
export function AuditRows({ first, asked, asking }: AuditRowsProps) {
	const [older, setOlder] = useState<readonly Row[]>([])
	const [last, setLast] = useState<readonly Row[]>()
	const { busy, says, run } = useHostAction()
	const rows = [...first, ...older]
	const readOlder = async () => {
		const page = await call('audit.page', { ...asked, before: rows.at(-1)?.seq })
		setOlder([...older, ...page.rows])
		setLast(page.rows)
		return ''
	}
	return (
		<>
			<Rows
				label="Audit rows"
				heads={['Row', 'When', 'Who', 'Role', 'Did', 'What', 'Outcome']}
				empty="No rows."
				rows={rows.map((row) => ({
					key: String(row.seq),
					cells: [
						row.seq,
						timeWords(row.utcTime),
						row.person || 'nobody',
						row.role,
						did[row.function],
						whatOf(row),
						outcomes[row.outcome],
					],
				}))}
			/>
			<Trouble says={says} />
			{(last ?? first).length === onPage && (
				<Box>
					<Button variant="outlined" disabled={busy || asking} onClick={() => run(readOlder)}>
						Older rows
					</Button>
				</Box>
			)}
		</>
	)
}
