/** The pairs owned, each with its verdict: its sentence begins with it. */
import { Box, Typography } from '@mui/material'
import type { FootwearResult } from '../../../../shared/engine/findings/assessment.ts'
import { workTitle } from '../../../../shared/engine/report/marked.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { nameOfPair } from './proposedFields.ts'
import type { AskedProps } from './stepTypes.ts'
import { isWork } from './workOf.ts'

/** A change to a pair by its name. */
function workName({ modifications = [], lacing = [] }: FootwearResult, id: string): string {
	const found = [...modifications, ...lacing].find((work) => isWork(work, id))
	return found ? workTitle(found) : id.replaceAll(/[.-]/g, ' ')
}
export function OwnedProposal({ assessment, draft }: AskedProps) {
	const { prescription, footwear } = assessment
	return (
		<Box component="ul" sx={{ m: 0, p: 0, listStyle: 'none', display: 'grid', gap: 1 }}>
			{prescription.owned.map(({ id, says, work }) => (
				<li key={id}>
					<Typography sx={{ fontWeight: 600 }}>{capital(nameOfPair(draft.visit, id))}</Typography>
					<Typography>{says}</Typography>
					{work.length > 0 && (
						<Typography variant="body2">
							Changes: {work.map((one) => workName(footwear, one)).join('; ')}
						</Typography>
					)}
				</li>
			))}
		</Box>
	)
}
