/**
 * Two entries that look like one person: both can be opened, and joined by a person; what was
 * joined can be taken apart.
 */
import { Alert, Box, Button, Link, Typography } from '@mui/material'
import { Trouble } from '../../parts/form.tsx'
import { change, type HostAction, useHostAction } from '../../query.ts'
import { type Duplicate, twice } from './Merged.tsx'

const personLink = {
	display: 'inline-flex',
	alignItems: 'center',
	minHeight: 44,
	px: 1,
	fontWeight: 600,
}
function JoinOrPart({
	duplicate: { playerId, like, joined },
	action: { busy, run },
}: {
	duplicate: Duplicate
	action: HostAction
}) {
	const join = async () => {
		await change('players.merge', {
			from: playerId,
			into: like,
			reason: 'entered twice, found on coming home from an outreach day',
		})
		return ''
	}
	const takeApart = (mergeId: string) => async () => {
		await change('players.unmerge', {
			mergeId,
			reason: 'joined by mistake on coming home from an outreach day',
		})
		return ''
	}
	return joined ? (
		<Button variant="outlined" disabled={busy} onClick={() => run(takeApart(joined))}>
			Take them apart again
		</Button>
	) : (
		<Button variant="outlined" disabled={busy} onClick={() => run(join)}>
			One person: join them
		</Button>
	)
}
/** @param leads who works here may join them */
export function Twice({ duplicate, leads }: { duplicate: Duplicate; leads: boolean }) {
	const { playerId, name, like, likeName, joined } = duplicate
	const action = useHostAction()
	return (
		<Alert severity={joined ? 'success' : 'warning'}>
			<Typography>
				{joined
					? `${name} came from the laptop and was joined to ${likeName}: they are shown as one ` +
						'player. Both entries are kept.'
					: `${twice(duplicate)} Nothing was joined.`}
			</Typography>
			<Trouble says={action.says} />
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, mt: 1 }}>
				{!joined && (
					<Link href={`#/players/${playerId}`} color="inherit" sx={personLink}>
						Open the one from the laptop
					</Link>
				)}
				<Link href={`#/players/${like}`} color="inherit" sx={personLink}>
					{joined ? 'Open the player' : 'Open the one at home'}
				</Link>
				{leads && <JoinOrPart duplicate={duplicate} action={action} />}
			</Box>
		</Alert>
	)
}
