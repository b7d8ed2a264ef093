/** What is not measured again: one key takes all of it, and what may not be taken is not offered. */
import { Box, Button, Typography } from '@mui/material'
import { offeredUnchanged } from '../../../../shared/engine/recheck/offered.ts'
import { withUnchanged } from '../../../../shared/engine/recheck/take-over.ts'
import type { TakenGroup } from '../../../../shared/engine/visit/terms.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { listed } from '../../../../shared/engine/words/en/format.ts'
import { groupName } from '../../../../shared/engine/words/en/recheck.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { Chosen } from './Chosen.tsx'
import type { SinceProps } from './sinceProps.ts'

interface UnchangedProps extends SinceProps {
	/** The visit that is looked back to; undefined where it cannot be read. */
	last: Visit | undefined
}
export function Unchanged({ draft, change, since, last }: UnchangedProps) {
	if (!last) return null
	const { unchanged: taken = [], measure = [] } = since
	const offered = offeredUnchanged(draft.visit, last, clinicProtocol)
	// what was taken stays in sight, so that it can be taken back
	const shown = [...new Set([...offered, ...taken])]
	const put = (groups: readonly TakenGroup[]) =>
		change((now) => ({ ...now, visit: withUnchanged(now.visit, last, groups) }))
	const day = dayInWords(since.visitDate)
	const again = measure.map(({ what, why }) => `${groupName(what)} (${why})`)
	return (
		<Box component="section" aria-label="Not measured again">
			<Typography variant="h2" sx={{ mb: 0.5 }}>
				Not measured again
			</Typography>
			{again.length > 0 && (
				<Typography variant="body2">To be measured today: {listed(again)}.</Typography>
			)}
			{shown.length === 0 ? (
				<Typography variant="body2" color="text.secondary">
					Nothing may be taken as on {day}.
				</Typography>
			) : (
				<Box sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 1 }}>
					<Button
						variant="outlined"
						aria-keyshortcuts="Alt+T"
						disabled={offered.every((group) => taken.includes(group))}
						onClick={() => put(shown)}
					>
						Unchanged since {day}: {listed(offered.map(groupName))}
					</Button>
					<Typography variant="body2" color="text.secondary" aria-hidden>
						Alt+T
					</Typography>
					<Chosen
						groups={shown.map((group) => ({ group, name: capital(groupName(group)) }))}
						taken={taken}
						put={put}
					/>
				</Box>
			)}
		</Box>
	)
}
