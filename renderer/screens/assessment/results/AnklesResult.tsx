/** The answer of the ankles: each side against the cut-off, what decided, and what it asks. */
import { Typography } from '@mui/material'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import { capital } from '../../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { waitsBecause } from '../../../parts/measure/testsWait.ts'
import { bandWords, differenceWords, isRead, sideLines } from './ankleFacts.ts'
import { ankleStrips } from './ankleStrips.ts'
import { Drawings, Figure, ResultSheet, TwoSides, Waiting } from './parts/ResultSheet.tsx'
import { StripDrawing } from './parts/StripDrawing.tsx'
import type { ResultProps } from './resultProps.ts'

export function AnklesResult({ assessment, visit }: ResultProps) {
	const { ankle, testsWait } = assessment
	const strips = ankleStrips(ankle, visit, clinicProtocol)
	const difference = differenceWords(ankle)
	return (
		<ResultSheet label="Ankles, left and right">
			<TwoSides>
				{bothSides.map((side) => (
					<Figure
						key={side}
						name={capital(side)}
						says={bandWords(ankle[side])}
						stop={ankle[side].recordedOnly === true}
						lines={sideLines(side, assessment, visit, waitsBecause(testsWait?.[side] ?? []))}
					/>
				))}
			</TwoSides>
			{difference && <Typography sx={{ fontWeight: 600 }}>{difference}</Typography>}
			{!isRead(ankle, visit) && (
				<Waiting>
					Knee to wall, lunge angle and the ankle off the ground are drawn here as they are read,
					left and right on one scale with the cut-off. The angle decides where both were read.
				</Waiting>
			)}
			<Drawings>
				{strips.map((strip) => (
					<StripDrawing key={strip.key} strip={strip} />
				))}
			</Drawings>
		</ResultSheet>
	)
}
