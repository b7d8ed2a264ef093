/** The reasons of a match, each with its basis; the studs of the sole over the player's joints. */
import { Box, Typography } from '@mui/material'
import type {
	Assessment,
	MatchReason,
	RankedModel,
} from '../../../../shared/engine/findings/assessment.ts'
import { soleFigure } from '../../../../shared/engine/footwear/sole-figure.ts'
import { jointRisks } from '../../../../shared/engine/footwear/studs.ts'
import type { Model } from '../../../../shared/engine/visit/shelf.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { Basis } from '../../../parts/Basis.tsx'
import { clinicProtocol as protocol } from '../../../parts/clinicProtocol.ts'
import { Picture } from '../../../parts/Picture.tsx'

export function ModelReasons({ ranked }: { ranked: RankedModel }) {
	return (
		<>
			<Reasons title="Stopped by" rows={ranked.stops} />
			<Reasons title="For" rows={ranked.for} />
			<Reasons title="Against" rows={ranked.against} />
			{ranked.unknown.length > 0 && (
				<Typography variant="body2">
					Sought, but not recorded of this model: {ranked.unknown.join(', ')}.
				</Typography>
			)}
		</>
	)
}
function Reasons({ title, rows }: { title: string; rows: readonly MatchReason[] }) {
	return rows.length === 0 ? null : (
		<Box>
			<Typography variant="h3">{title}</Typography>
			{rows.map((row) => (
				<Basis
					key={`${row.rule} ${row.says}`}
					because={row.because}
					basis={row.basis}
					head={
						<Typography variant="body2" sx={{ flex: '1 1 320px' }}>
							{row.says}
							{row.points ? ` (${row.points})` : ''}
						</Typography>
					}
				/>
			))}
		</Box>
	)
}

interface ModelSolesProps {
	ranked: RankedModel
	model: Model | undefined
	assessment: Assessment
	visit: Visit
}
export function ModelSoles({ ranked, model, assessment, visit }: ModelSolesProps) {
	const { system, label, fitting } = ranked.size
	const size = model?.sizes.find(
		(known) => known.system === system && known.label === label && known.fitting === fitting,
	)
	if (!model || !size) return null
	return (
		<Box>
			<Typography variant="h3">Studs and joints</Typography>
			<Typography variant="body2" color="text.secondary" sx={{ mb: 1 }}>
				True proportion. A ring shows how near a stud counts as under the joint; red marks a joint
				at risk and the studs under it. The foot slides and turns in the boot: feel for the stud
				with the foot inside.
			</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 3 }}>
				{bothSides.map((side) => (
					<Picture
						key={side}
						tell
						height={440}
						caption={`${side === 'left' ? 'Left' : 'Right'} sole of ${ranked.name}`}
						figure={soleFigure(
							model,
							size,
							assessment.sizing,
							side,
							protocol,
							jointRisks(visit, assessment.posture, side),
						)}
					/>
				))}
			</Box>
		</Box>
	)
}
