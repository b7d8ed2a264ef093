/**
 * The answer of the feet: both drawn to scale, the inside length with what decided it, sizes, width
 * and the room in the pairs owned. It changes as the keys fall.
 */
import { Box, Typography } from '@mui/material'
import { type ReactNode, useMemo } from 'react'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import { systemsOf } from '../../../../shared/engine/report/player/size-labels.ts'
import { termWords } from '../../../../shared/engine/visit/terms.ts'
import type { Side, Visit } from '../../../../shared/engine/visit/visit.ts'
import { capital, dayWords, sizeShown } from '../../../../shared/engine/words/words.ts'
import { firmnessWords, verdictWords } from '../decide/proposalWords.ts'
import { nameOfPair } from '../decide/proposedFields.ts'
import { useFirmness } from '../decide/useFirmness.ts'
import { broad, narrow } from '../narrow.ts'
import { FeetDrawing } from './FeetDrawing.tsx'
import {
	decidedWords,
	differenceWords,
	notToBuyBy,
	pairRooms,
	spanInMm,
	widthHolds,
	widthWords,
} from './feetFacts.ts'
import type { ResultProps } from './resultProps.ts'

/** Where drawing and answers do not stand side by side. */
const stacked = '@container (max-width: 66rem)'
const facts = {
	display: 'grid',
	rowGap: 0.75,
	alignContent: 'start',
	// where not all is in sight the answer comes before the drawing
	[stacked]: { order: -1 },
	[broad]: { gridTemplateColumns: 'minmax(0, 1fr) minmax(0, 1fr)', columnGap: 3, pb: 1 },
} as const
const figures = { fontVariantNumeric: 'tabular-nums' } as const

export function FeetResult({ assessment, visit, earlier, draft, focused }: ResultProps) {
	const { sizing } = assessment
	const measured = sizing.left.lengthMm ?? sizing.right.lengthMm
	const lacks = (side: Side) => {
		const reason = draft.visit.notMeasured?.[`feet.${side}.heelToToeMm`]
		if (reason) return `${capital(side)} not measured: ${reason}`
		return `The ${side} foot is drawn here once heel to toe is measured.`
	}
	return (
		<Box
			sx={{
				flex: '1 0 auto',
				display: 'grid',
				gridTemplateColumns: 'minmax(0, 1.15fr) minmax(15rem, 1fr)',
				gridTemplateRows: 'minmax(min-content, 1fr)',
				columnGap: 3,
				[stacked]: {
					gridTemplateColumns: 'minmax(0, 1fr)',
					gridTemplateRows: 'auto minmax(min-content, 1fr)',
					rowGap: 1,
				},
				[broad]: {
					gridTemplateColumns: 'minmax(0, 1fr)',
					gridTemplateRows: 'minmax(min-content, 1fr) auto',
					rowGap: 2,
				},
			}}
		>
			<Box
				sx={{
					display: 'flex',
					flexDirection: 'column',
					[narrow]: { minHeight: '22rem' },
				}}
			>
				<FeetDrawing
					visit={visit}
					focused={focused}
					difference={capital(differenceWords(sizing))}
					lacks={lacks}
				/>
			</Box>
			<Box sx={facts}>
				{measured === undefined ? <Waiting /> : <Sizes {...{ assessment, visit, earlier }} />}
				<Pairs assessment={assessment} visit={draft.visit} />
			</Box>
		</Box>
	)
}
/** What will stand here, and how. */
function Waiting() {
	return (
		<Typography color="text.secondary">
			Inside length, size and width stand here once a foot has its heel to toe. The longer foot
			decides.
		</Typography>
	)
}
function Sizes({
	assessment,
	visit,
	earlier,
}: Pick<ResultProps, 'assessment' | 'visit' | 'earlier'>) {
	const { sizing } = assessment
	const { insideLengthMm, trainers } = sizing
	const tried = useSizeFirmness(visit, earlier, assessment)
	const notToBuy = notToBuyBy(assessment)
	// what nothing is bought by is not asked to be measured again
	const firm = notToBuy ? '' : firmnessWords(tried)
	const decided = decidedWords(sizing)
	return (
		<>
			{notToBuy && (
				<Typography
					sx={{
						pl: 1,
						borderLeft: 4,
						borderColor: 'error.main',
						color: 'error.main',
						fontWeight: 600,
					}}
				>
					{notToBuy}
				</Typography>
			)}
			{insideLengthMm && (
				<Fact name="Inside length, boots">
					<Typography
						component="span"
						sx={{
							...figures,
							fontSize: '1.5rem',
							fontWeight: notToBuy ? 400 : 700,
							lineHeight: 1.2,
						}}
					>
						{spanInMm(insideLengthMm)}
					</Typography>
					<Small>{decided && `decided by ${decided}`}</Small>
					<Small>{trainers && `trainers ${spanInMm(trainers.insideLengthMm)}`}</Small>
				</Fact>
			)}
			<Labels visit={visit} assessment={assessment} firm={firm} />
			{widthWords(sizing) && (
				<Fact name="Ball width">
					<Box component="span" sx={{ ...figures, fontWeight: 600 }}>
						{widthWords(sizing)}
					</Box>
					<Small>{widthHolds(assessment)}</Small>
				</Fact>
			)}
		</>
	)
}
/** Of the size alone: while the hand measures, the other questions are not tried. */
function useSizeFirmness(visit: Visit, earlier: readonly Visit[], assessment: Assessment) {
	const ofSize = useMemo(() => {
		const { prescription } = assessment
		const questions = prescription.questions.filter(({ id }) => id === 'size')
		return { ...assessment, prescription: { ...prescription, questions } }
	}, [assessment])
	return useFirmness(visit, earlier, ofSize).size
}
/** The nearest label of each system, to begin the search with. */
function Labels({
	visit,
	assessment,
	firm,
}: {
	visit: Visit
	assessment: Assessment
	firm: string
}) {
	const labels = systemsOf(visit, assessment.sizing)
	if (labels.length === 0) return null
	return (
		<Fact name="Nearest size">
			<Box
				sx={{ display: 'flex', flexWrap: 'wrap', columnGap: 1.5, fontSize: '0.95rem', ...figures }}
			>
				{labels.map(([system, { label, scale }]) => (
					<span key={system}>
						{system === 'jpCm' ? 'JP' : termWords(system)}{' '}
						<strong>{`${sizeShown(label)}${scale === 'child' ? ' child' : ''}`}</strong>
					</span>
				))}
			</Box>
			<Small>{firm}</Small>
		</Fact>
	)
}
/** The room in each pair owned: what the foot has outgrown stands first. */
function Pairs({ assessment, visit }: { assessment: Assessment; visit: Visit }) {
	const rooms = pairRooms(assessment)
	if (rooms.length === 0) return null
	return (
		<Fact name="Toe room in the pairs owned">
			<Box component="ul" sx={{ m: 0, p: 0, listStyle: 'none', fontSize: '0.925rem', ...figures }}>
				{rooms.map(({ id, verdict, by, room, says, unfit }) => (
					<Box component="li" key={id} sx={unfit ? { color: 'error.main', fontWeight: 600 } : {}}>
						{capital(nameOfPair(visit, id))} {[room, says].filter(Boolean).join(', ')}
						{/* no keep rests on nothing */}
						{room !== '' || verdict !== 'keep' ? `: ${verdictWords[verdict]}` : ''}
						{by ? ` by ${dayWords(by)}` : ''}
					</Box>
				))}
			</Box>
		</Fact>
	)
}
function Fact({ name, children }: { name: string; children: ReactNode }) {
	return (
		<Box>
			<Typography variant="body2" color="text.secondary" component="h2" sx={{ lineHeight: 1.3 }}>
				{name}
			</Typography>
			{children}
		</Box>
	)
}
/** Its place is kept, so that nothing moves when words come. */
const Small = ({ children }: { children: ReactNode }) => (
	<Typography variant="body2" color="text.secondary" sx={{ ...figures, minHeight: '1.43em' }}>
		{children}
	</Typography>
)
