/** What to look for in the pair of one role: its sole, its inside, what gave way, and models. */
import { Box, Stack, Typography } from '@mui/material'
import type { RolePair } from '../../../../shared/engine/findings/assessment.ts'
import { present } from '../../../../shared/engine/plain/present.ts'
import { unmirrored } from '../../../../shared/engine/prescription/lines.ts'
import { plannedFor } from '../../../../shared/engine/prescription/planned-pair.ts'
import { settledPlan } from '../../../../shared/engine/prescription/settled.ts'
import { termWords } from '../../../../shared/engine/visit/terms.ts'
import { featureName } from '../../../../shared/engine/words/en/features.ts'
import { Facts } from './Facts.tsx'
import { Models } from './Models.tsx'
import { PlanPair } from './PlanPair.tsx'
import { meansWords, spanWords } from './proposalWords.ts'
import { nameOfPair, pairsOf } from './proposedFields.ts'
import type { AskedProps } from './stepTypes.ts'

export function PairProposal(props: AskedProps) {
	const { assessment, question, draft } = props
	const pairs = pairsOf(assessment, question)
	return (
		<Stack spacing={2}>
			{pairs.map((pair) => (
				<OnePair key={pair.id} pair={pair} ownedName={ownedNameOf(pair, draft)} />
			))}
			<Models {...props} />
			<PlannedPairs {...props} />
		</Stack>
	)
}
/** Pairs to be bought as they are settled, each to be planned in the season; and those planned. */
function PlannedPairs({ assessment, given, question, draft, change }: AskedProps) {
	const settled = settledPlan(given, draft.decisions).pairs
	const toPlan = pairsOf(assessment, question).flatMap((proposed) => {
		const stands = settled.find(({ id }) => id === proposed.id)
		const isBought = stands?.means === 'buy'
		if (!isBought && !plannedFor(draft.visit, proposed)) return []
		return [{ ...proposed, ...present({ sole: stands?.sole }), shelf: stands?.shelf ?? [] }]
	})
	return toPlan.map((pair) => (
		<PlanPair
			key={pair.id}
			pair={pair}
			models={assessment.footwear.ranked.filter(({ id }) => pair.shelf.includes(id))}
			draft={draft}
			change={change}
		/>
	))
}
const ownedNameOf = ({ ownedPair }: RolePair, { visit }: AskedProps['draft']): string =>
	ownedPair === undefined ? '' : nameOfPair(visit, ownedPair)
interface OnePairProps {
	pair: RolePair
	/** The owned pair that serves; empty where none does. */
	ownedName: string
}
function OnePair({ pair, ownedName }: OnePairProps) {
	const { surfaces, sole, insideLengthMm, width, offsetMm, seek, avoid, settled, means } = pair
	return (
		<Box>
			<Facts
				facts={[
					['For', surfaces.map(termWords).join(', ')],
					['Needed', meansWords[means]],
					['Owned pair that serves', ownedName],
					['Sole', sole && termWords(sole)],
					['Inside length', insideLengthMm && spanWords(insideLengthMm)],
					['Width', width],
					['Offset', offsetMm && `${offsetMm.min} to ${offsetMm.max} mm`],
					['Seek', seek.map(featureName).join(', ')],
					// the opposite of what is sought goes without saying
					['Avoid', unmirrored(avoid, seek).map(featureName).join(', ')],
				]}
			/>
			{settled.length > 0 && (
				<Box sx={{ mt: 1 }}>
					<Typography sx={{ fontWeight: 600 }}>What gave way</Typography>
					<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
						{settled.map((one) => (
							<li key={`${one.feature} ${one.over}`}>{one.says}</li>
						))}
					</Box>
				</Box>
			)}
		</Box>
	)
}
