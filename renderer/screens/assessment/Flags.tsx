/** The warning-sign questions. Not answered is not asked, never no. Injury and clot questions unfold when they are called for. */
import { Box, Button, Paper, Typography } from '@mui/material'
import { generalFlagShape, injurySchema, wellsSchema } from '../../../shared/visit/visit.ts'
import { fieldMeta } from '../../parts/fieldMeta.ts'
import { FieldRow, MeasureField } from '../../parts/MeasureField.tsx'
import { visitSchema } from '../../../shared/visit/visit.ts'
import { withValue, writePath } from './path.ts'
import type { StepProps } from './stepProps.ts'

const general = Object.keys(generalFlagShape).map((key) => `screening.${key}`)
const injury = Object.keys(injurySchema.shape).filter((key) => key !== 'side').map((key) => `screening.injury.${key}`)
const wells = Object.keys(wellsSchema.shape).map((key) => `screening.wells.${key}`)

function Question({ path, draft, change }: { path: string } & Pick<StepProps, 'draft' | 'change'>) {
	const meta = fieldMeta(visitSchema, path)
	if (meta.kind !== 'yesNo') return <FieldRow paths={[path]} draft={draft} change={change} />
	return (
		<Box sx={{ display: 'grid', gridTemplateColumns: '1fr auto', gap: 2, alignItems: 'center', py: 0.5 }}>
			<Typography>{meta.title}</Typography>
			<MeasureField path={path} draft={draft} change={change} />
		</Box>
	)
}
export function Flags({ draft, change }: StepProps) {
	const { screening } = draft.visit
	return (
		<Box sx={{ display: 'grid', gap: 2 }}>
			<Paper variant="outlined" sx={{ p: 2 }}>
				<Box sx={{ display: 'flex', justifyContent: 'space-between', alignItems: 'center', gap: 2 }}>
					<Typography variant="h2">Warning signs</Typography>
					<Button variant="outlined" onClick={() => change((now) => general.reduce((next, path) => (next.visit.screening && path.split('.')[1]! in next.visit.screening ? next : withValue(next, path, false)), now))}>I asked them all: the rest are no</Button>
				</Box>
				<Typography variant="body2" color="text.secondary">A question left alone counts as not asked. Keys y and n answer the one in focus.</Typography>
				{general.map((path) => <Question key={path} path={path} draft={draft} change={change} />)}
			</Paper>
			<Paper variant="outlined" sx={{ p: 2 }}>
				<Typography variant="h2">Recent ankle or foot injury</Typography>
				{screening?.injury ? (
					<>
						<FieldRow paths={['screening.injury.side']} draft={draft} change={change} />
						{injury.map((path) => <Question key={path} path={path} draft={draft} change={change} />)}
						<Button onClick={() => change((now) => ({ ...now, visit: writePath(now.visit, 'screening.injury', undefined) }))}>No recent injury: take these away</Button>
					</>
				) : (
					<Box sx={{ display: 'flex', gap: 1 }}>
						{(['left', 'right'] as const).map((side) => <Button key={side} variant="outlined" onClick={() => change((now) => ({ ...now, visit: writePath(now.visit, 'screening.injury', { side }) }))}>Injury on the {side} side</Button>)}
					</Box>
				)}
			</Paper>
			{screening?.calfSuspicion || screening?.wells ? (
				<Paper variant="outlined" sx={{ p: 2 }}>
					<Typography variant="h2">Clot suspected: what goes into the letter</Typography>
					{wells.map((path) => <Question key={path} path={path} draft={draft} change={change} />)}
				</Paper>
			) : null}
		</Box>
	)
}
