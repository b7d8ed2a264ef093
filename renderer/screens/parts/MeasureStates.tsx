/** The field of a measure in each kind and state, and what stands beside it. */
import { Button } from '@mui/material'
import { useState } from 'react'
import { DenseField, DenseGrid, Labelled } from '../../parts/DenseField.tsx'
import { withNotMeasured, withRaw, withValue } from '../../parts/draft-path.ts'
import { FootPicture } from '../../parts/FootPicture.tsx'
import { AskedOf } from '../../parts/help/AskedOf.tsx'
import { MeasureHelpCard } from '../../parts/help/Help.tsx'
import { measureHelp } from '../../parts/help/topic.ts'
import { FieldRow, MeasureField } from '../../parts/MeasureField.tsx'
import { Measuring } from '../../parts/Measuring.tsx'
import { OneOf, SeveralOf } from '../../parts/measure/Toggles.tsx'
import { Specimen } from './Specimen.tsx'
import { draft } from './sample.ts'

const length = 'feet.left.heelToToeMm'
const measures = [
	{
		name: 'a number with repeats and the last visit',
		path: length,
		start: draft,
		before: [241, 242],
	},
	{ name: 'no value yet', path: 'feet.left.heelToBallMm', start: draft },
	{ name: 'outside what can be measured', path: length, start: withRaw(draft, length, '999') },
	{ name: 'unusual', path: length, start: withValue(draft, length, 135) },
	{ name: 'not measured', path: length, start: withNotMeasured(draft, length, 'pain') },
	{
		name: 'not measured, for another reason',
		path: length,
		start: withNotMeasured(draft, length, 'dressing in place'),
	},
	{ name: 'read in two ways', path: length, start: withRaw(draft, length, '247,248') },
	{ name: 'a choice', path: 'play.code', start: draft },
	{ name: 'a question that was answered', path: 'screening.nightPain', start: draft },
	{ name: 'a question that was not asked', path: 'screening.fever', start: draft },
] as const
type Measure = (typeof measures)[number] & { before?: readonly number[] }

function Typed({ path, start, before }: Measure) {
	const [now, setNow] = useState(start)
	return <MeasureField path={path} draft={now} change={setNow} before={before} />
}
function BothSides() {
	const [now, setNow] = useState(draft)
	return (
		<FieldRow
			paths={[length, 'feet.right.heelToToeMm']}
			hint="Standing, weight on both feet."
			draft={now}
			change={setNow}
		/>
	)
}
const denseNumbers = ['play.matchesPerWeek', 'play.monthsPerYearInOneSport', 'body.statureCm']
const densePlaces = ['match', 'training', 'running', 'everyday'] as const
function Dense() {
	const [now, setNow] = useState(draft)
	const [one, setOne] = useState<(typeof densePlaces)[number] | undefined>('match')
	const [several, setSeveral] = useState<(typeof densePlaces)[number][] | undefined>(['match'])
	const toggles = { name: 'Worn for', path: 'footwear.0.roles', terms: densePlaces }
	return (
		<DenseGrid columnRem={9}>
			{denseNumbers.map((path) => (
				<DenseField key={path} path={path} draft={now} change={setNow} />
			))}
			<Labelled title="One of several" whole>
				<OneOf {...toggles} chosen={one} choose={setOne} />
			</Labelled>
			<Labelled title="Several of them" hint="Chosen by the space bar" whole>
				<SeveralOf {...toggles} chosen={several ?? []} choose={setSeveral} />
			</Labelled>
		</DenseGrid>
	)
}
function Beside({ path, start }: Pick<Measure, 'path' | 'start'>) {
	const [open, setOpen] = useState(true)
	if (!open) return <Button onClick={() => setOpen(true)}>How to measure</Button>
	return <Measuring path={path} draft={start} close={() => setOpen(false)} />
}
export function MeasureStates() {
	return (
		<>
			<Specimen
				part="Field of a measure"
				states={[
					...measures.map((measure) => ({
						name: measure.name,
						part: <Typed {...measure} />,
					})),
					{ name: 'left and right in a row', part: <BothSides /> },
					{ name: 'in columns, and terms side by side', part: <Dense /> },
				]}
			/>
			<Specimen
				part="How to measure, beside the field"
				states={measures
					.filter(({ path }) => path.startsWith('feet.'))
					.map((measure) => ({ name: measure.name, part: <Beside {...measure} /> }))}
			/>
			<Specimen
				part="How to measure"
				states={measureHelp.map(([key, help]) => ({
					name: key,
					part: <MeasureHelpCard help={help} side="right" />,
				}))}
			/>
			<Specimen
				part="What a condition asks"
				states={(['calcaneal-apophysitis', 'previous-foot-ulcer'] as const).map((condition) => ({
					name: condition,
					part: <AskedOf condition={condition} />,
				}))}
			/>
			<Specimen
				part="Picture of a foot"
				states={(['left', 'right'] as const).map((side) => ({
					name: side,
					part: measureHelp
						.slice(0, 1)
						.map(([, help]) => <FootPicture key={help.title} help={help} side={side} />),
				}))}
			/>
		</>
	)
}
