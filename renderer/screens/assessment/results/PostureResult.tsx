/** The answer of the posture: the index of each foot on its bands, and each reading by its limit. */
import { Typography } from '@mui/material'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { FactTable } from './parts/FactTable.tsx'
import { Figure, ResultSheet, TwoSides, Waiting } from './parts/ResultSheet.tsx'
import { StripDrawing } from './parts/StripDrawing.tsx'
import {
	indexStrip,
	indexWords,
	legWords,
	type PostureCell,
	type PostureRow,
	postureRows,
	toeLine,
} from './postureFacts.ts'
import type { ResultProps } from './resultProps.ts'

export function PostureResult({ assessment, visit }: ResultProps) {
	const { posture } = assessment
	const strip = indexStrip(assessment, visit, clinicProtocol)
	const rows = postureRows(assessment, visit, clinicProtocol)
	const leg = legWords(posture.legLength)
	return (
		<ResultSheet label="Posture, left and right">
			{strip || rows.length > 0 ? (
				<TwoSides>
					{bothSides.map((side) => (
						<Figure
							key={side}
							name={capital(side)}
							says={capital(indexWords(posture[side]))}
							lines={[toeLine(posture[side])]}
						/>
					))}
				</TwoSides>
			) : (
				<Waiting>
					The foot posture index of each foot is drawn here on its bands, and each reading stands
					beside its limit, left and right, what lies beyond first.
				</Waiting>
			)}
			{strip && <StripDrawing strip={strip} />}
			{rows.length > 0 && <Readings rows={rows} />}
			{leg && <Typography sx={{ fontWeight: 600 }}>{leg}</Typography>}
		</ResultSheet>
	)
}
const Readings = ({ rows }: { rows: readonly PostureRow[] }) => (
	<FactTable
		label="Readings against their limits"
		head={['Reading', 'Left', 'Right', 'Limit']}
		rows={rows.map(({ key, name, left, right, limit }) => ({
			key,
			name,
			limit,
			cells: [
				{ key: 'left', says: <Cell cell={left} /> },
				{ key: 'right', says: <Cell cell={right} /> },
			],
		}))}
	/>
)
/** Beyond its limit is told by a word and by weight, not by colour alone. */
function Cell({ cell: { says, verdict } }: { cell: PostureCell }) {
	return verdict === 'beyond' ? <strong>{says}</strong> : says || 'not taken'
}
