/** The versions of the protocol that were kept, and the way back to each. */
import { Box, Button, Typography } from '@mui/material'
import type { OutputOf } from '../../../shared/contract.ts'
import { dayOfMoment } from '../../parts/dates.ts'
import { Panel } from '../../parts/panels.tsx'
import type { ProtocolDraft } from './useProtocolDraft.ts'

type Version = OutputOf<'protocol.versions'>['versions'][number]
/** @param take undefined where it may not be taken up again, or is in force */
function VersionLine({
	version: { file, at, by, why },
	inForce,
	take,
}: {
	version: Version
	inForce: boolean
	take: (() => void) | undefined
}) {
	return (
		<Box
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				gap: 2,
				alignItems: 'center',
				justifyContent: 'space-between',
				borderBottom: 1,
				borderColor: 'divider',
				py: 1,
			}}
		>
			<Box>
				<Typography sx={{ fontWeight: 600 }}>
					Version {file.revision}, {dayOfMoment(at)}, {by}
					{inForce ? ' (in force)' : ''}
				</Typography>
				<Typography variant="body2">
					{why}. Values set: {Object.keys(file.values ?? {}).length}.
				</Typography>
			</Box>
			{take ? (
				<Button variant="outlined" onClick={take}>
					Take the values of version {file.revision}
				</Button>
			) : null}
		</Box>
	)
}
/**
 * @param savedAs the version in force; undefined while the shipped values are
 * @param take undefined where who works here may not change the protocol
 */
export function Versions({
	versions,
	savedAs,
	take,
}: {
	versions: readonly Version[]
	savedAs: string | undefined
	take: ProtocolDraft['take'] | undefined
}) {
	return (
		<Panel title="Versions" hint="Signed visits name the version they were signed under.">
			{versions.length === 0 ? (
				<Typography color="text.secondary">Only the shipped values so far.</Typography>
			) : null}
			{versions.map((version) => (
				<VersionLine
					key={version.savedAs}
					version={version}
					inForce={version.savedAs === savedAs}
					take={
						take && version.savedAs !== savedAs
							? () => take(version.file, `Back to version ${version.file.revision}`)
							: undefined
					}
				/>
			))}
			{take && savedAs ? (
				<Box>
					<Button variant="outlined" onClick={() => take(undefined, 'Back to the shipped values')}>
						Restore all shipped values
					</Button>
				</Box>
			) : null}
		</Panel>
	)
}
