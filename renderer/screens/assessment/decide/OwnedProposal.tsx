/** The pairs owned, each with its verdict. What a finding below says of a pair is not said twice. */
import { Box, Typography } from '@mui/material'
import type { FootwearResult, OwnedPair } from '../../../../shared/engine/findings/assessment.ts'
import type { Finding } from '../../../../shared/engine/findings/finding.ts'
import { workTitle } from '../../../../shared/engine/report/marked.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { fitShown } from '../fitWords.ts'
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
/** Whether a finding is made of the same grounds as the verdict of the pair. */
const isSaidIn = ({ id, code, params }: Finding, { because, params: own }: OwnedPair): boolean =>
	code === 'footwear.pair' &&
	because.includes(id) &&
	JSON.stringify(params.said) === JSON.stringify(own.said)
export function OwnedProposal({ assessment, question, draft }: AskedProps) {
	const { prescription, footwear } = assessment
	const below = findingsIn(question, assessment)
	const newIn = ({ id }: OwnedPair): string => {
		const pair = draft.visit.footwear?.find((one) => one.id === id)
		const fit = pair ? fitShown(assessment, draft.visit, pair) : ''
		return fit && `. ${fit}`
	}
	return (
		<Box component="ul" sx={{ m: 0, p: 0, listStyle: 'none', display: 'grid', gap: 1 }}>
			{prescription.owned.map((pair) => (
				<li key={pair.id}>
					<Typography sx={{ fontWeight: 600 }}>
						{capital(nameOfPair(draft.visit, pair.id))}: {verdictWords[pair.verdict]}
						{pair.by ? ` by ${dayInWords(pair.by)}` : ''}
						{newIn(pair)}
					</Typography>
					{!below.some((finding) => isSaidIn(finding, pair)) && (
						<Typography>{pair.says}</Typography>
					)}
					{pair.work.length > 0 && (
						<Typography variant="body2">
							Changes: {pair.work.map((one) => workName(footwear, one)).join('; ')}
						</Typography>
					)}
				</li>
			))}
		</Box>
	)
}
