/** After a restore or a move: what came back or was kept, each with a decision for the owner. */
import { Alert, Box, Button, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { Answered } from '../../parts/Answered.tsx'
import { Outcome } from '../../parts/form.tsx'
import { acts, Panel, Rows, timeWords } from '../../parts/panels.tsx'
import { change, type HostAction, useHost, useHostAction } from '../../query.ts'
import { DecideLine } from './DecideLine.tsx'

type List = OutputOf<'backups.cameBack'>['lists'][number]
type Line = List['lines'][number]

/** What a line is about, as the headings of the page order it. */
const whatWords: Readonly<Record<string, string>> = {
	person: 'Person',
	passphrase: 'Passphrase',
	consent: 'Consent',
	destroyed: 'Destroyed',
	sending: 'Sending',
	'to-check': 'Outbox',
}
const howWords: Record<List['how'], string> = {
	restore: 'Restored',
	move: 'Brought to this PC',
	copy: 'Copied or moved from',
}
const hintOf = ({ how, backup, backupAt, before, open }: List): string =>
	[
		`${howWords[how]}: ${backup}.`,
		backupAt ? `Its last record is of ${timeWords(backupAt)}.` : '',
		before ? `What stood before is kept as ${before}.` : '',
		open > 0
			? 'What a line says is so already. Until all lines are decided, nothing is sent by itself.'
			: '',
	]
		.filter(Boolean)
		.join(' ')
function decidedWords({ decided, choices }: Line): string {
	if (!decided) return ''
	const says = choices.find(({ choice }) => choice === decided.choice)?.says ?? decided.choice
	return `${says} (${decided.by}, ${timeWords(decided.at)})`
}
function Lines({ list, action: { busy, run } }: { list: List; action: HostAction }) {
	const [chosen, setChosen] = useState<string>()
	const decide = (decisions: Parameters<typeof decideLines>[1]) =>
		run(async () => {
			await decideLines(list.restoreId, decisions)
			setChosen(undefined)
			return decisions.length === 1 ? 'Decided.' : `${decisions.length} lines were decided.`
		})
	const openLines = list.lines.filter((line) => !line.decided)
	return (
		<>
			{openLines.length > 0 && (
				<Box>
					<Button
						variant="contained"
						disabled={busy}
						onClick={() =>
							decide(
								openLines.flatMap(({ lineId, choices: [first] }) =>
									first ? [{ lineId, choice: first.choice }] : [],
								),
							)
						}
					>
						{openLines.length === 1
							? 'Leave the open line as it stands'
							: `Leave all ${openLines.length} open lines as they stand`}
					</Button>
				</Box>
			)}
			<Rows
				label="After the restore"
				heads={['What', 'How the restore left it', 'Decision', acts]}
				empty="Nothing came back, and nothing had to be kept."
				rows={list.lines.map((line) => ({
					key: line.lineId,
					cells: [
						whatWords[line.what] ?? line.what,
						line.says,
						decidedWords(line) || 'Open',
						line.decided ? (
							''
						) : chosen === line.lineId ? (
							<DecideLine
								key="decide"
								line={line}
								busy={busy}
								decide={(decision) => decide([decision])}
								close={() => setChosen(undefined)}
							/>
						) : (
							<Button
								key="open"
								size="small"
								variant="outlined"
								aria-label={`Decide: ${line.says}`}
								onClick={() => setChosen(line.lineId)}
							>
								Decide
							</Button>
						),
					],
				}))}
			/>
		</>
	)
}
const decideLines = (
	restoreId: string,
	decisions: { lineId: string; choice: Line['choices'][number]['choice']; passphrase?: string }[],
) => change('backups.decide', { restoreId, decisions })

export function AfterRestore() {
	const lists = useHost('backups.cameBack', {})
	const action = useHostAction()
	return (
		<Answered of={lists} what="the list after the restore">
			{(held) => (
				<Stack spacing={3}>
					<Outcome of={action} />
					{held.lists.length === 0 && (
						<Alert severity="info" role="status">
							No backup was restored here, or nothing changed by it.
						</Alert>
					)}
					{held.lists.map((list) => (
						<Panel key={list.restoreId} title="After the restore" hint={hintOf(list)}>
							{list.open === 0 && <Typography>All lines are decided.</Typography>}
							<Lines list={list} action={action} />
						</Panel>
					))}
				</Stack>
			)}
		</Answered>
	)
}
