/** Changing, dropping or adding an element: nothing is stored until its reason is there. */
import { Box, Button, TextField } from '@mui/material'
import { useState } from 'react'
import type { InsertElement } from '../../../../shared/engine/findings/assessment.ts'
import { elementAsDecided } from '../../../../shared/engine/insert/decided.ts'
import { present } from '../../../../shared/engine/plain/present.ts'
import { aboutOf } from '../../../../shared/engine/visit/decisions.ts'
import type { Side } from '../../../../shared/engine/visit/visit.ts'
import { parseNumber } from '../../../parts/parseNumber.ts'
import type { StepProps } from '../stepProps.ts'
import { withElement } from './insertDecisions.ts'

type EditKind = 'change' | 'drop' | 'add'
/** The element that is being edited, and how. */
export interface Editing {
	element: string
	kind: EditKind
}
const keepWords: Record<EditKind, string> = {
	change: 'Keep this change',
	drop: 'Drop it',
	add: 'Add it',
}
/** A drop is not told to the laboratory, so neither is its reason. */
const reasonLabels: Record<EditKind, string> = {
	change: 'Reason (printed on the insert order)',
	drop: 'Reason',
	add: 'Reason (printed on the insert order)',
}
const most = 400

/** One number of 0 to 400 in the element's unit; no value where nothing is typed. */
function readValue(text: string, unit: string): { value?: number; wrong: string } {
	if (text.trim() === '') return { wrong: '' }
	const parsed = parseNumber(text, unit)
	if (!parsed.ok) return { wrong: parsed.says }
	const [value, ...more] = parsed.values
	if (value === undefined || more.length > 0 || value < 0 || value > most)
		return { wrong: `${text} cannot stand here: one number, 0 to ${most} ${unit}.` }
	return { value, wrong: '' }
}

interface InsertEditorProps extends Pick<StepProps, 'change'>, Editing {
	side: Side
	unit: string | undefined
	value: number | undefined
	/** What the engine proposes; undefined for an addition. */
	proposed: InsertElement | undefined
	done: () => void
}
export function InsertEditor(props: InsertEditorProps) {
	const { side, element, unit, kind, proposed, done, change } = props
	const [text, setText] = useState(props.value === undefined ? '' : String(props.value))
	const [says, setSays] = useState('')
	const [why, setWhy] = useState('')
	const { value, wrong } = readValue(text, unit ?? '')
	const keep = () => {
		const decision = present({
			element,
			choice: kind,
			why: why.trim(),
			value: kind === 'drop' ? undefined : value,
			says: says.trim() || undefined,
			...(proposed ? aboutOf(elementAsDecided(proposed)) : {}),
		})
		change((now) => withElement(now, side, element, decision))
		done()
	}
	return (
		<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1.5, my: 1, alignItems: 'flex-start' }}>
			{kind !== 'drop' && unit !== undefined && (
				<TextField
					size="small"
					label={`Value (${unit})`}
					value={text}
					error={wrong !== ''}
					helperText={wrong}
					onChange={(event) => setText(event.target.value)}
					slotProps={{ inputLabel: { shrink: true }, htmlInput: { inputMode: 'decimal' } }}
				/>
			)}
			{kind !== 'drop' && <ShortWords label="Words (may be left out)" value={says} set={setSays} />}
			<ShortWords label={reasonLabels[kind]} required value={why} set={setWhy} />
			<Button variant="contained" disabled={why.trim() === '' || wrong !== ''} onClick={keep}>
				{keepWords[kind]}
			</Button>
			<Button onClick={done}>Leave it</Button>
		</Box>
	)
}

interface ShortWordsProps {
	label: string
	value: string
	set: (text: string) => void
	required?: boolean
}
function ShortWords({ label, value, set, required = false }: ShortWordsProps) {
	return (
		<TextField
			size="small"
			required={required}
			label={label}
			value={value}
			onChange={(event) => set(event.target.value)}
			slotProps={{ inputLabel: { shrink: true }, htmlInput: { maxLength: 500 } }}
			sx={{ flex: 1, minWidth: 180 }}
		/>
	)
}
