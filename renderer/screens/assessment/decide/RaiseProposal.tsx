/** The heel raise of each pair and foot, what limits it, and in which steps it begins and ends. */
import { Box, Stack, Typography } from '@mui/material'
import type { RaiseInPair, RaiseKind } from '../../../../shared/engine/findings/assessment.ts'
import { readingInWords } from '../../../../shared/engine/words/reading.ts'
import { Basis } from '../../../parts/Basis.tsx'
import { raiseWords } from './proposalWords.ts'
import { nameOfPair } from './proposedFields.ts'
import { SideTable } from './SideTable.tsx'
import type { AskedProps } from './stepTypes.ts'

const aims: Readonly<Record<RaiseKind, string>> = {
	range: 'Heel above forefoot, for the range of the ankle',
	pain: 'For pain, added to the shoes worn',
	'leg-length': 'For the leg length, added on one side',
	none: 'No raise is aimed at',
}
const offsets: Readonly<Record<RaiseInPair['offsetFrom'], string>> = {
	measured: 'measured',
	stated: 'usual for its kind',
	unknown: 'offset not known',
}
const offsetWords = ({ offsetMm, offsetFrom }: RaiseInPair): string =>
	offsetMm === undefined ? offsets.unknown : `offset ${offsetMm} mm, ${offsets[offsetFrom]}`

export function RaiseProposal({ assessment, draft }: AskedProps) {
	const { aim, pairs, steps } = assessment.prescription.raise
	return (
		<Stack spacing={1.5}>
			<Typography>
				{aims[aim.kind]}
				{aim.mm ? `: ${aim.mm.left} mm left, ${aim.mm.right} mm right` : ''}
			</Typography>
			{aim.because.length > 0 && (
				<Typography variant="body2" color="text.secondary">
					because {aim.because.map(readingInWords).join('; ')}
				</Typography>
			)}
			{aim.basis && <Basis because={aim.because} basis={aim.basis} />}
			{pairs.length > 0 && (
				<SideTable
					label="Heel raise by pair and foot"
					of="Pair"
					rows={pairs.map((pair) => ({
						key: pair.pair,
						name: <PairCell pair={pair} name={nameOfPair(draft.visit, pair.pair)} />,
						left: raiseWords(pair.left),
						right: raiseWords(pair.right),
					}))}
				/>
			)}
			{steps.length > 0 && (
				<Box>
					<Typography sx={{ fontWeight: 600 }}>Steps</Typography>
					<Box component="ol" sx={{ m: 0, pl: 2.5 }}>
						{steps.map((step) => (
							<li key={`${step.code} ${step.from} ${step.when}`}>{step.says}</li>
						))}
					</Box>
				</Box>
			)}
		</Stack>
	)
}
function PairCell({ pair, name }: { pair: RaiseInPair; name: string }) {
	return (
		<>
			{name}
			<Typography variant="body2" color="text.secondary">
				{offsetWords(pair)}
			</Typography>
			{pair.limits.map(({ code, says }) => (
				<Typography key={code} variant="body2">
					{says}
				</Typography>
			))}
		</>
	)
}
