/**
 * The clinic's letterhead, paper, size systems and own sentences, with a sample page that follows
 * each change.
 */
import {
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	FormGroup,
	Stack,
	TextField,
	Typography,
} from '@mui/material'
import type { FormEvent } from 'react'
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import { contrastWords } from '../../../shared/engine/report/colour.ts'
import { sizeSystems, termWords } from '../../../shared/engine/visit/terms.ts'
import { call } from '../../host.ts'
import { Answered } from '../../parts/Answered.tsx'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { Field, Outcome, Sheet } from '../../parts/form.tsx'
import { useReading } from '../../query.ts'
import { LogoFile } from './LogoFile.tsx'
import { type Path, titleOf } from './letterheadForm.ts'
import { SamplePage } from './SamplePage.tsx'
import { Sentences } from './Sentences.tsx'
import { type Letterhead as Typed, useLetterhead } from './useLetterhead.ts'

/** The systems a document can show; the mondopoint length always stands. */
const systems = sizeSystems.filter((sizeSystem) => sizeSystem !== 'mondopoint')

function HeadFields({ typed, owner }: { typed: Typed; owner: boolean }) {
	const field = (path: Path, extra: Partial<Parameters<typeof Field>[0]> = {}) => (
		<Field
			label={titleOf(path)}
			value={typed.form[path]}
			set={(value) => typed.put(path, value)}
			error={typed.wrong[path]}
			{...extra}
		/>
	)
	const ofOwner = owner ? {} : { readOnly: true, hint: 'Only the owner changes this.' }
	return (
		<Sheet title="Letterhead">
			{field('name')}
			{field('phone', { optional: true })}
			{field('address', { rows: 4, optional: true })}
			<Stack spacing={2}>
				{field('email', { optional: true })}
				{field('colour', { type: 'color', hint: contrastWords(typed.form.colour).says })}
			</Stack>
			{field('clinician.name', ofOwner)}
			{field('clinician.registration', ofOwner)}
			<LogoFile
				logo={typed.choices.logo}
				set={(logo) => {
					typed.choose({ logo })
					if (logo) typed.setSays('')
				}}
				refused={typed.setSays}
			/>
		</Sheet>
	)
}
function PaperAndSizes({ typed: { choices, choose } }: { typed: Typed }) {
	const shown = choices.sizeSystems ?? systems
	return (
		<Sheet title="Paper and sizes">
			<TextField
				select
				label="Paper"
				value={choices.paper ?? 'A4'}
				onChange={(event) => choose({ paper: event.target.value === 'A4' ? 'A4' : 'Letter' })}
				slotProps={{ select: { native: true }, inputLabel: { shrink: true } }}
			>
				<option value="A4">A4</option>
				<option value="Letter">Letter</option>
			</TextField>
			<FormGroup role="group" aria-label="Size systems shown">
				<Typography sx={{ fontWeight: 600 }}>Size systems shown</Typography>
				{systems.map((system) => (
					<FormControlLabel
						key={system}
						label={termWords(system)}
						control={
							<Checkbox
								checked={shown.includes(system)}
								disabled={shown.length === 1 && shown.includes(system)}
								onChange={(_, on) =>
									choose({
										sizeSystems: systems.filter((known) =>
											known === system ? on : shown.includes(known),
										),
									})
								}
							/>
						}
					/>
				))}
			</FormGroup>
		</Sheet>
	)
}
function LetterheadPage({ held, owner }: { held: Clinic; owner: boolean }) {
	const typed = useLetterhead(held)
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', lg: '1.2fr 1fr' },
				gap: 3,
				alignItems: 'start',
			}}
		>
			<Stack
				component="form"
				noValidate
				spacing={2}
				onSubmit={(event: FormEvent) => {
					event.preventDefault()
					void typed.save()
				}}
			>
				<HeadFields typed={typed} owner={owner} />
				<PaperAndSizes typed={typed} />
				<Sentences
					own={typed.choices.texts ?? {}}
					set={(texts) =>
						typed.choose({ texts: Object.keys(texts).length > 0 ? texts : undefined })
					}
				/>
				<Outcome of={typed} />
				<Box>
					<Button type="submit" variant="contained" size="large">
						Save letterhead
					</Button>
				</Box>
			</Stack>
			<SamplePage clinic={typed.clinic} paper={typed.choices.paper} />
		</Box>
	)
}
/** The sample is assessed by the protocol in force. */
async function read(): Promise<Clinic> {
	const [clinic] = await Promise.all([call('clinic.get', {}), loadProtocol()])
	return clinic
}
/** @param owner whether the owner works here, whose name the letterhead carries */
export function Letterhead({ owner }: { owner: boolean }) {
	const answer = useReading('letterhead', {}, ['clinic.get', 'protocol.get'], read)
	return (
		<Answered of={answer} what="the letterhead">
			{(held) => <LetterheadPage held={held} owner={owner} />}
		</Answered>
	)
}
