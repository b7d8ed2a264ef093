/** Fields of the short forms, sheets, and what is said beside a button. */
import { Button } from '@mui/material'
import { type ComponentProps, useState } from 'react'
import { PlaceField } from '../../parts/choose/PlaceField.tsx'
import { DateField } from '../../parts/DateField.tsx'
import { Field, Form, Sheet } from '../../parts/form.tsx'
import { Needs } from '../../parts/Needs.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { Specimen } from './Specimen.tsx'
import { longName } from './sample.ts'

type FieldState = { name: string; start?: string } & Partial<ComponentProps<typeof Field>>
const fields: readonly FieldState[] = [
	{ name: 'empty' },
	{ name: 'optional, with a hint', optional: true, hint: 'May be left empty.' },
	{ name: 'too long a name', start: longName, label: longName },
	{ name: 'wrong', start: 'x', error: 'Name x has 1 letter. Write two or more.' },
	{ name: 'password', type: 'password', start: 'seven grey herons' },
	{ name: 'several lines', rows: 3, start: `${longName}\n${longName}` },
	{ name: 'choice', options: ['first', longName] },
	{ name: 'colour', type: 'color', start: '#1f5f5b' },
	{ name: 'day in the short form', type: 'date', start: '2011-06-30' },
]
/** A field that can be typed in. */
function Typed({ start = '', label = 'Name', name: _, ...rest }: FieldState) {
	const [value, setValue] = useState(start)
	return <Field label={label} {...rest} value={value} set={setValue} />
}
const days = [
	{ name: 'no day yet', start: '' },
	{ name: 'a day', start: '2011-06-30' },
	{ name: 'no day of the calendar', start: '31 June 2011' },
	{ name: 'refused', start: '2031-06-30', error: 'Birth date 30 June 2031 is still to come.' },
]
function TypedDay({ start, error }: { start: string; error?: string }) {
	const [value, setValue] = useState(start)
	return <DateField label="Birth date" value={value} set={setValue} error={error} />
}
function ChosenPlace({ start = '' }: { start?: string }) {
	const [path, setPath] = useState(start)
	return (
		<PlaceField
			label="Folder or stick"
			purpose="pack"
			value={path}
			set={setPath}
			hint="One that goes along."
		/>
	)
}
export function FormStates() {
	return (
		<>
			<Specimen
				part="Place field"
				states={[
					{ name: 'nothing chosen', part: <ChosenPlace /> },
					{ name: 'chosen', part: <ChosenPlace start={`/media/stick/${longName}`} /> },
				]}
			/>
			<Specimen
				part="Field"
				states={fields.map((field) => ({ name: field.name, part: <Typed {...field} /> }))}
			/>
			<Specimen
				part="Date field"
				states={days.map((day) => ({ name: day.name, part: <TypedDay {...day} /> }))}
			/>
			<Specimen
				part="Form, sheet, needs and print"
				states={[
					{
						name: 'a form on a sheet',
						part: (
							<Form label="Sample form" submit={() => {}}>
								<Sheet title={longName} hint="Two columns where the window is wide enough.">
									<Typed name="left" label="Left" />
									<Typed name="right" label="Right" />
								</Sheet>
							</Form>
						),
					},
					{
						name: 'what is still to fill in',
						part: (
							<Needs
								fields={[
									['', 'folder or stick'],
									['there', 'name'],
									['', longName],
								]}
							/>
						),
					},
					{ name: 'print', part: <PrintButton what="this list" /> },
					{ name: 'print, with nothing to print', part: <PrintButton what="this list" disabled /> },
					{ name: 'a button that waits', part: <Button disabled>Save</Button> },
				]}
			/>
		</>
	)
}
