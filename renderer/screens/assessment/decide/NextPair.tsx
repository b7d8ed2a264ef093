/** What the next pair should have and should not, feature by feature, with the rules behind it. */
import { Alert, AlertTitle, Box, Paper, Stack, Typography } from '@mui/material'
import { featureName } from '../../../../shared/engine/words/en/features.ts'
import { Basis, sentence } from '../../../parts/Basis.tsx'
import type { AssessedProps, DraftProps } from '../stepProps.ts'
import { Choose } from './Choose.tsx'
import {
	choose,
	lineOf,
	type MergedWish,
	mergeWishes,
	undecidedWishes,
	wishesOf,
} from './decisions.ts'
import { Section } from './Section.tsx'

export function NextPair({ draft, change, assessment }: AssessedProps) {
	if (!assessment) return null
	const { target, contradictions } = assessment.footwear
	const all = wishesOf(assessment).length
	return (
		<Section title="Next pair: seek and avoid">
			<Stack spacing={2}>
				{contradictions.map((contradiction) => (
					<Alert key={[contradiction.feature, contradiction.other].join(' ')} severity="warning">
						<AlertTitle>Caution: two rules pull apart</AlertTitle>
						{contradiction.says}
					</Alert>
				))}
				{all === 0 ? (
					<Typography color="text.secondary">
						Nothing in the findings asks for a feature or against one.
					</Typography>
				) : (
					<Typography>
						{all - undecidedWishes(draft, assessment).length} of {all} features decided
					</Typography>
				)}
				<Box sx={{ display: 'grid', gridTemplateColumns: { xs: '1fr', lg: '1fr 1fr' }, gap: 2 }}>
					{(['seek', 'avoid'] as const).map((kind) => {
						const rows = mergeWishes(kind, target[kind])
						return (
							rows.length > 0 && (
								<Stack key={kind} spacing={1}>
									<Typography variant="h3">{kind === 'seek' ? 'Seek' : 'Avoid'}</Typography>
									{rows.map((row) => (
										<WishRow key={row.id} wish={row} draft={draft} change={change} />
									))}
								</Stack>
							)
						)
					})}
				</Box>
			</Stack>
		</Section>
	)
}

interface WishRowProps extends DraftProps {
	wish: MergedWish
}
function WishRow({ wish, draft, change }: WishRowProps) {
	const choice = lineOf(draft, wish.id)?.choice
	const title = featureName(wish.feature)
	return (
		<Paper variant="outlined" sx={{ p: 2 }}>
			<Stack
				direction="row"
				spacing={2}
				useFlexGap
				sx={{ flexWrap: 'wrap', justifyContent: 'space-between', alignItems: 'flex-start' }}
			>
				<Typography
					sx={{
						...sentence,
						fontWeight: 600,
						...(choice === 'drop' ? { textDecoration: 'line-through' } : {}),
					}}
				>
					{title}
				</Typography>
				<Choose
					about={`${wish.id.startsWith('seek') ? 'seek' : 'avoid'} ${title}`}
					without="change"
					value={choice === 'accept' || choice === 'drop' ? choice : undefined}
					set={(next) => change((now) => choose(now, wish.id, next))}
				/>
			</Stack>
			{wish.reasons.map((reason) => (
				<Basis
					key={reason.rule}
					because={reason.because}
					basis={reason.basis}
					head={
						<Typography variant="body2" sx={{ flex: '1 1 260px' }}>
							{reason.says}
						</Typography>
					}
				/>
			))}
		</Paper>
	)
}
