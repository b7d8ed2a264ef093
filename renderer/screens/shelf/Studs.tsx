/** Whether a sole has studs, where they stand, and the sole drawn with them. */
import { Box, TextField } from '@mui/material'
import type { SizingResult } from '../../../shared/engine/findings/assessment.ts'
import { soleFigure } from '../../../shared/engine/footwear/sole-figure.ts'
import type { Model } from '../../../shared/engine/visit/shelf.ts'
import { clinicProtocol as protocol } from '../../parts/clinicProtocol.ts'
import { Picture } from '../../parts/Picture.tsx'
import { Panel } from '../../parts/panels.tsx'
import { EntryRows } from './EntryRows.tsx'
import { emptyStud, type StudState, studFields } from './modelTexts.ts'
import type { ModelFormState } from './useModelForm.ts'

/** No player stands on the sole of the form. */
const nobody: SizingResult = {
	left: { fitting: {} },
	right: { fitting: {} },
	changes: { left: {}, right: {} },
	findings: [],
	workings: [],
}
const studWords: Record<StudState, string> = {
	'not recorded': 'not recorded',
	none: 'a sole without studs',
	listed: 'studs, listed below',
}
const studStates = Object.keys(studWords) as StudState[]
const hint =
	'From heel: 0 at the heel, 1 at the toe, or millimetres such as 182 mm in the first size ' +
	'above. Across: -1 at the inner edge, 0 in the middle, 1 at the outer edge, or millimetres ' +
	'from the middle such as -35 mm.'
const places = { xFraction: '0.72 or 182 mm', yFraction: '-0.6 or -35 mm' }

export function Studs({ form }: { form: ModelFormState }) {
	const { texts, put, read, shown } = form
	const choose = (typed: string) => {
		const studState = studStates.find((state) => state === typed) ?? 'not recorded'
		const first = studState === 'listed' && texts.studs.length === 0
		put({ studState, studs: first ? [emptyStud()] : texts.studs })
	}
	return (
		<Panel title="Studs" hint={hint}>
			<TextField
				select
				size="small"
				label="Studs"
				value={texts.studState}
				sx={{ maxWidth: 260 }}
				slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
				onChange={(event) => choose(event.target.value)}
			>
				{studStates.map((state) => (
					<option key={state} value={state}>
						{studWords[state]}
					</option>
				))}
			</TextField>
			{texts.studState === 'listed' && (
				<Box
					sx={{
						display: 'grid',
						gridTemplateColumns: { xs: '1fr', lg: '1fr auto' },
						gap: 3,
						alignItems: 'start',
					}}
				>
					<EntryRows
						what="stud"
						prefix="studs"
						names={studFields}
						rows={texts.studs}
						put={(studs) => put({ studs })}
						add={() => emptyStud(texts.studs.at(-1))}
						columns="1fr 1fr 120px 120px 100px 100px"
						shown={shown}
						hints={places}
					/>
					{read.model && <Sole model={read.model} />}
				</Box>
			)}
		</Panel>
	)
}
/** The right sole of the first size; nothing while no stud stands on it. */
function Sole({ model }: { model: Model }) {
	const [size] = model.sizes
	if (!size || (model.studs?.length ?? 0) === 0) return null
	return (
		<Picture
			figure={soleFigure(model, size, nobody, 'right', protocol)}
			caption={`Size ${size.label}, right sole, from above`}
		/>
	)
}
