/** What became of a signed visit: its versions, what was added afterwards, and who must be told. */
import { Alert, Box, Button, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Panel, Rows, timeWords } from '../../parts/panels.tsx'
import { Differences } from './Differences.tsx'

export type History = OutputOf<'visits.history'>
const noteNames: Record<History['notes'][number]['what'], string> = {
	'in-error': 'Entered in error',
	'late-entry': 'Late entry',
	countersign: 'Countersigned',
	statement: 'Statement of the player',
}

export function WhoMustBeTold({ tell, version }: { tell: History['tell']; version: number }) {
	if (tell.length === 0) return null
	return (
		<Alert severity="warning" role="region" aria-label="Who must be told">
			<strong>Who must be told</strong>: they hold an earlier version than {version}.
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{tell.map(({ recipient, version: held, channel, at }) => (
					<li key={recipient}>
						{recipient}: holds version {held}, {channel.replace('-', ' ')}, {timeWords(at)}
					</li>
				))}
			</Box>
			Note it under "Report was handed over" once they have the new one.
		</Alert>
	)
}
export function Versions({
	versions,
	report,
}: {
	versions: History['versions']
	report: (version: number) => void
}) {
	return (
		<Panel title="History of versions" hint="Every version is kept as it was signed.">
			{versions.toReversed().map((signing) => (
				<Box key={signing.version} component="article" aria-label={`Version ${signing.version}`}>
					<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'center' }}>
						<Typography variant="h3">Version {signing.version}</Typography>
						<Button variant="outlined" onClick={() => report(signing.version)}>
							Report of version {signing.version}
						</Button>
					</Box>
					<Typography color="textSecondary">
						Signed {timeWords(signing.signedAt)}
						{signing.by ? ` by ${signing.by}` : ''}.
						{signing.reason ? ` Reason: ${signing.reason}.` : ''}
					</Typography>
					{signing.trouble && <Alert severity="warning">{signing.trouble}</Alert>}
					{signing.version > 1 && !signing.trouble && (
						<Differences
							label={`Changed in version ${signing.version}`}
							differences={signing.differences}
							none="No entry and no decision differs."
						/>
					)}
				</Box>
			))}
		</Panel>
	)
}
export function AddedAfterwards({ history: { notes, troubles = [] } }: { history: History }) {
	if (notes.length + troubles.length === 0) return null
	return (
		<Panel title="Added afterwards">
			{troubles.map((trouble) => (
				<Alert key={trouble} severity="warning">
					{trouble}
				</Alert>
			))}
			<Rows
				label="Added afterwards"
				heads={['What', 'Text', 'Happened on', 'Written', 'By']}
				empty=""
				rows={notes.map((note) => ({
					key: `${note.what} ${note.at}`,
					cells: [
						noteNames[note.what],
						note.text || 'no words',
						note.occurredOn ? dayInWords(note.occurredOn) : '',
						timeWords(note.at),
						note.by,
					],
				}))}
			/>
		</Panel>
	)
}
