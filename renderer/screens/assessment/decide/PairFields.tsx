/** The pair of one role as the clinician wants it: sole, features sought and avoided, purchase. */
import { Box, Button, FormControlLabel, Stack, Switch, Typography } from '@mui/material'
import { type Feature, features, soles, termWords } from '../../../../shared/engine/visit/terms.ts'
import { featureName } from '../../../../shared/engine/words/en/features.ts'
import type { FieldsProps } from './ChangeFields.tsx'
import { Choice } from './Choice.tsx'

export function PairFields({ fields, put }: FieldsProps) {
	return (
		<Stack spacing={2}>
			<Stack direction="row" useFlexGap sx={{ gap: 3, flexWrap: 'wrap', alignItems: 'center' }}>
				<Choice
					label="Sole"
					value={fields.sole ?? ''}
					none="not chosen"
					options={soles.map((sole) => [sole, termWords(sole)] as const)}
					set={(sole) => put({ sole })}
				/>
				<FormControlLabel
					label="A new pair is worth buying"
					control={
						<Switch
							checked={fields.buy ?? false}
							onChange={(event) => put({ buy: event.target.checked })}
						/>
					}
				/>
			</Stack>
			<Features
				title="Seek"
				chosen={fields.seek ?? []}
				others={fields.avoid ?? []}
				set={(seek) => put({ seek })}
			/>
			<Features
				title="Avoid"
				chosen={fields.avoid ?? []}
				others={fields.seek ?? []}
				set={(avoid) => put({ avoid })}
			/>
		</Stack>
	)
}
interface FeaturesProps {
	title: 'Seek' | 'Avoid'
	chosen: readonly Feature[]
	/** Those of the other list: one feature is not both. */
	others: readonly Feature[]
	set: (chosen: Feature[]) => void
}
function Features({ title, chosen, others, set }: FeaturesProps) {
	const free = features.filter((feature) => !chosen.includes(feature) && !others.includes(feature))
	return (
		<Box role="group" aria-label={title}>
			<Typography sx={{ fontWeight: 600, mb: 1 }}>{title}</Typography>
			<Stack direction="row" useFlexGap sx={{ gap: 1, flexWrap: 'wrap', alignItems: 'center' }}>
				{chosen.map((feature) => (
					<Button
						key={feature}
						variant="outlined"
						size="small"
						aria-label={`Take out: ${featureName(feature)}`}
						onClick={() => set(chosen.filter((other) => other !== feature))}
						sx={{ minHeight: 40, borderRadius: 5 }}
					>
						{featureName(feature)}
						<Box component="span" aria-hidden sx={{ ml: 1 }}>
							×
						</Box>
					</Button>
				))}
				<Choice<Feature>
					label={`${title} also`}
					value=""
					none="choose"
					options={free.map((feature) => [feature, featureName(feature)] as const)}
					set={(feature) => set([...chosen, feature])}
				/>
			</Stack>
		</Box>
	)
}
