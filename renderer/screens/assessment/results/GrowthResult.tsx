/** The answer of growth: the stage with its error, rates between visits, and the next measuring. */
import { Alert, Box, Typography } from '@mui/material'
import { capital } from '../../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { dayInWords } from '../../../parts/dates.ts'
import { useHost } from '../../../query.ts'
import { nameOfPair } from '../decide/proposedFields.ts'
import { rateLines, reviewLines, stageLines, stageWords, withoutScale } from './growthFacts.ts'
import { ageStrip, shareStrip } from './growthStrips.ts'
import { Drawings, Figure, Quiet, ResultSheet, TwoSides, Waiting } from './parts/ResultSheet.tsx'
import { StripDrawing } from './parts/StripDrawing.tsx'
import type { ResultProps } from './resultProps.ts'

export function GrowthResult({ assessment, visit, earlier, draft }: ResultProps) {
	const { growth } = assessment
	const account = useHost('clinicAudit.forecast', {}, { when: growth?.footForecast !== undefined })
	if (!growth) return <Waiting>Growth is looked at until 18 years.</Waiting>
	const strips = [ageStrip(growth, visit, clinicProtocol), shareStrip(growth, clinicProtocol)]
	const drawn = strips.filter((strip) => strip !== undefined)
	const rates = rateLines(growth, visit, earlier, clinicProtocol)
	const nameOf = (id: string) => capital(nameOfPair(draft.visit, id))
	return (
		<ResultSheet label="Growth">
			<TwoSides>
				<Figure name="Growth stage" says={stageWords(growth)} lines={stageLines(growth)} />
				{growth.measureAgainBy && (
					<Figure
						name="Measure the feet again by"
						says={dayInWords(growth.measureAgainBy)}
						lines={reviewLines(growth, nameOf)}
					/>
				)}
			</TwoSides>
			{drawn.length === 0 && <Waiting>{withoutScale(growth)}</Waiting>}
			<Drawings>
				{drawn.map((strip) => (
					<StripDrawing key={strip.key} strip={strip} />
				))}
			</Drawings>
			{rates.length > 0 && (
				<Box>
					{rates.map((line) => (
						<Typography key={line} sx={{ fontVariantNumeric: 'tabular-nums' }}>
							{line}
						</Typography>
					))}
				</Box>
			)}
			{account.value?.says.map((says) => (
				<Alert key={says} severity="warning">
					{says}
				</Alert>
			))}
			{drawn.length > 0 && (
				<Quiet>
					Estimates, not measurements of maturity, and not for choosing or leaving out a player.
				</Quiet>
			)}
		</ResultSheet>
	)
}
