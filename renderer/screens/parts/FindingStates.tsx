/** What the engine found and drew: basis, workings, charts, documents. */
import { Button, Typography } from '@mui/material'
import { useState } from 'react'
import { chartsOf } from '../../../shared/engine/charts/charts.ts'
import { Basis } from '../../parts/Basis.tsx'
import { ChartView } from '../../parts/ChartView.tsx'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { PasteDialog } from '../../parts/PasteDialog.tsx'
import { Picture } from '../../parts/Picture.tsx'
import { applyPaste, planBlock } from '../../parts/pasteBlock.ts'
import { ReportPreview } from '../../parts/ReportPreview.tsx'
import { LiveSheet } from '../../parts/sheet/LiveSheet.tsx'
import { KeptSheet } from '../../parts/sheet/SignedSheet.tsx'
import { Workings, workingsOf } from '../../parts/Workings.tsx'
import { Specimen } from './Specimen.tsx'
import { assessment, draft, earlier, latest, longName } from './sample.ts'

const [finding] = assessment.findings
const [chart] = chartsOf('sizing', latest, [earlier], assessment, clinicProtocol)
const workings = workingsOf(assessment, ['sizing', 'ankle'])
const dot = {
	svg:
		'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 40">' +
		'<circle cx="20" cy="20" r="15" fill="#1d2726"/></svg>',
	alternative: 'A dot, for want of a picture.',
}
const pastedRows = [
	['feet.left.heelToToeMm', 'feet.right.heelToToeMm'],
	['feet.left.heelToBallMm', 'feet.right.heelToBallMm'],
]
const blocks = [
	{ state: 'pasting a block', name: 'Paste a block', text: '251\t252\n181\t999' },
	{
		state: 'pasting a block with names',
		name: 'Paste a block with names',
		text: '\tR\tL\nFoot length (cm)\t25.2\t25.1\nArch height\t32\t33',
	},
]
const keptSheet = {
	pdf: { base64: '', sha256: '', fileName: 'appointment-2027-01-20.pdf' },
	held: 'Held; medical review the same day',
	facts: [
		{ label: 'Complaint', text: 'Calcaneal apophysitis (growing heel), left, current' },
		{ label: 'Size', text: longName },
		{ label: 'Review', text: '27 January 2027' },
	],
}
/** The dialog stands over the page, so it waits for a press. */
function Pasting({ name, text }: { name: string; text: string }) {
	const [open, setOpen] = useState(false)
	const [taken, setTaken] = useState(0)
	const [at, setAt] = useState('feet.left.heelToToeMm')
	const plan = planBlock(text, pastedRows, at)
	const take = () => {
		setTaken(Object.keys(applyPaste(draft, plan.cells).visit.feet ?? {}).length)
		setOpen(false)
	}
	return (
		<>
			<Button variant="outlined" onClick={() => setOpen(true)}>
				{name}
			</Button>
			{taken > 0 && <Typography>Taken in for {taken} feet.</Typography>}
			{open && (
				<PasteDialog
					{...{ plan, at, draft, take }}
					fields={pastedRows.flat()}
					moveTo={setAt}
					close={() => setOpen(false)}
				/>
			)}
		</>
	)
}
export function FindingStates() {
	return (
		<>
			<Specimen
				part="Basis"
				states={[
					{
						name: 'of a finding',
						part: finding && (
							<Basis
								because={finding.because}
								basis={finding.basis}
								head={<Typography>{finding.says}</Typography>}
							/>
						),
					},
					{
						name: 'without numbers and threshold, too long a source',
						part: (
							<Basis
								because={[]}
								basis={{ rule: longName, source: `${longName}, ${longName}`, strength: 'practice' }}
							/>
						),
					},
				]}
			/>
			<Specimen
				part="Workings"
				states={[
					{ name: 'several', part: <Workings workings={workings} /> },
					{ name: 'none', part: <Workings workings={[]} /> },
				]}
			/>
			<Specimen
				part="Chart and picture"
				states={[
					{ name: 'a course over two visits', part: chart && <ChartView chart={chart} /> },
					{ name: 'a picture with a caption', part: <Picture figure={dot} caption={longName} /> },
					{ name: 'a picture with its words', part: <Picture figure={dot} caption="" tell /> },
				]}
			/>
			<Specimen
				part="Preview of the report and pasting"
				states={[
					{
						name: 'with findings',
						part: (
							<ReportPreview
								beside={false}
								draft={draft}
								assessment={assessment}
								earlier={[earlier]}
							/>
						),
					},
					{
						name: 'before anything can be found',
						part: (
							<ReportPreview beside={false} draft={draft} assessment={undefined} earlier={[]} />
						),
					},
					...blocks.map((block) => ({ name: block.state, part: <Pasting {...block} /> })),
				]}
			/>
			<Specimen
				part="Sheet for the appointment"
				states={[
					{
						name: 'of an open visit',
						part: <LiveSheet draft={draft} assessment={assessment} earlier={[earlier]} />,
					},
					{
						name: 'before anything can be found',
						part: <LiveSheet draft={draft} assessment={undefined} earlier={[]} />,
					},
					{
						name: 'as it was kept, with something held',
						part: <KeptSheet sheet={keptSheet} visitId="sample" />,
					},
					{
						name: 'of a visit signed before sheets were kept',
						part: <KeptSheet sheet={undefined} visitId="sample" />,
					},
				]}
			/>
		</>
	)
}
