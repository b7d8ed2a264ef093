/** Why a button waits, said beside it. */
import { Typography } from '@mui/material'

/**
 * Fields still empty, by the names on the screen; each pair is whether it is filled and its name.
 */
export function Needs({ fields }: { fields: readonly (readonly [unknown, string])[] }) {
	const open = fields.filter(([filled]) => !filled).map(([, name]) => name)
	return open.length === 0 ? null : (
		<Typography variant="body2" color="textSecondary">
			Still to fill in: {open.join(', ')}.
		</Typography>
	)
}
/** '1 player', '2 players'. */
export const counted = (count: number, single: string, several = `${single}s`): string =>
	`${count} ${count === 1 ? single : several}`
