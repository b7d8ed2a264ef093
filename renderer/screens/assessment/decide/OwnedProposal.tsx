/** The pairs owned, each with its verdict. What a finding below says of a pair is not said twice. */
import { Box, Typography } from '@mui/material'
import type { FootwearResult } from '../../../../shared/engine/findings/assessment.ts'
import type { Finding } from '../../../../shared/engine/findings/finding.ts'
import { workTitle } from '../../../../shared/engine/report/marked.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { findingsIn } from './answering.ts'
import { verdictWords } from './proposalWords.ts'
import { nameOfPair } from './proposedFields.ts'
import type { AskedProps } from './stepTypes.ts'
import { isWork } from './workOf.ts'

/** A change to a pair by its name. */
function workName({ modifications = [], lacing = [] }: FootwearResult, id: string): string {
	const found = [...modifications, ...lacing].find((work) => isWork(work, id))
	return found ? workTitle(found) : id.replaceAll(/[.-]/g, ' ')
}
/** A finding names the pair first; the rest is the sentence of the pair. */
const saysSame = (finding: Finding, says: string): boolean =>
	finding.says.toLowerCase().endsWith(says.toLowerCase())
export function OwnedProposal({ assessment, question, draft }: AskedProps) {
	const { prescription, footwear } = assessment
	const below = findingsIn(question, assessment)
	return (
		<Box component="ul" sx={{ m: 0, p: 0, listStyle: 'none', display: 'grid', gap: 1 }}>
			{prescription.owned.map(({ id, says, verdict, by, work }) => (
				<li key={id}>
					<Typography sx={{ fontWeight: 600 }}>
						{capital(nameOfPair(draft.visit, id))}: {verdictWords[verdict]}
						{by ? ` by ${dayInWords(by)}` : ''}
					</Typography>
					{!below.some((finding) => saysSame(finding, says)) && <Typography>{says}</Typography>}
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
