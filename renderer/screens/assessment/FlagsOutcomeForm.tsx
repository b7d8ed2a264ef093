/** The form in which the outcome of a sign is recorded. */
import {
	Box,
	Button,
	Checkbox,
	FormControlLabel,
	FormGroup,
	TextField,
	ToggleButton,
	ToggleButtonGroup,
	Typography,
} from '@mui/material'
import { useState } from 'react'
import type { Holdable } from '../../../shared/engine/findings/gate.ts'
import { isDay } from '../../../shared/engine/plain/days.ts'
import type { Outcome } from '../../../shared/engine/visit/visit.ts'
import { holdableNames } from '../../../shared/engine/words/en/gate.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { DateField } from '../../parts/DateField.tsx'
import type { HeldBySign } from './flagsHeld.ts'
import {
	blankOutcome,
	type OutcomeTyped,
	outcomeResults,
	outcomesBegun,
	outcomeTyped,
	type SignOf,
	withOutcomeTyped,
} from './flagsTyped.ts'
import type { DraftProps } from './stepProps.ts'

const words = [
	{ key: 'found', label: 'What was found or excluded', most: 500 },
	{ key: 'how', label: 'How, such as a film, a scan, an examination', most: 200 },
	{ key: 'by', label: 'By whom', most: 120 },
] as const

/** The first thing that is missing, in words; undefined where the outcome can be recorded. */
function lacking(form: OutcomeTyped, visitDate: string): string | undefined {
	if (form.result === null) return 'Choose the result: excluded, confirmed or recovered.'
	const empty = words.find(({ key }) => form[key].trim() === '')
	if (empty) return `Fill in: ${empty.label.toLowerCase()}.`
	if (!isDay(form.on)) return 'Give the day of the outcome.'
	if (form.on > visitDate) return 'The day of the outcome lies after this visit: correct it.'
	return undefined
}
interface LiftsProps {
	group: HeldBySign
	form: OutcomeTyped
	set: (form: OutcomeTyped) => void
}
function Lifts({ group, form, set }: LiftsProps) {
	const held = [...new Set(group.holds.map(({ what }) => what))]
	const waits = (what: Holdable) =>
		group.holds.some((hold) => hold.what === what && hold.until === 'treating-doctor')
	const toggle = (what: Holdable) =>
		set({
			...form,
			lifts: form.lifts.includes(what)
				? form.lifts.filter((each) => each !== what)
				: [...form.lifts, what],
		})
	return (
		<>
			<Typography id={`lifts-${group.rule}-${group.side}`} sx={{ fontWeight: 600 }}>
				No longer held
			</Typography>
			<FormGroup row aria-labelledby={`lifts-${group.rule}-${group.side}`}>
				{held.map((what) => (
					<FormControlLabel
						key={what}
						control={<Checkbox checked={form.lifts.includes(what)} onChange={() => toggle(what)} />}
						label={capital(holdableNames[what])}
					/>
				))}
			</FormGroup>
			{held.some(waits) ? (
				<FormControlLabel
					control={
						<Checkbox
							checked={form.clears}
							onChange={({ target }) => set({ ...form, clears: target.checked })}
						/>
					}
					label="The treating doctor allows sport and matches again"
				/>
			) : null}
		</>
	)
}
const isBegun = (draft: DraftProps['draft'], { rule, side }: SignOf): boolean =>
	outcomesBegun(draft).some((sign) => sign.rule === rule && sign.side === side)
/** Nothing is lifted unless it is ticked; what is typed stays in the draft until it is recorded. */
export function OutcomeForm({ group, draft, change }: { group: HeldBySign } & DraftProps) {
	const { visitDate } = draft.visit
	const form = outcomeTyped(draft, group)
	const set = (next: OutcomeTyped) => change((now) => withOutcomeTyped(now, group, next))
	const [tried, setTried] = useState(false)
	const missing = lacking(form, visitDate)
	const record = () => {
		setTried(true)
		const { result, clears, ...said } = form
		if (result === null || missing !== undefined) return
		const outcome: Outcome = {
			...said,
			rule: group.rule,
			side: group.side,
			result,
			found: said.found.trim(),
			how: said.how.trim(),
			by: said.by.trim(),
			...(clears ? { treatingDoctorClears: true } : {}),
		}
		change((now) => ({
			...withOutcomeTyped(now, group, blankOutcome(now)),
			visit: { ...now.visit, outcomes: [...(now.visit.outcomes ?? []), outcome] },
		}))
		setTried(false)
	}
	const begun = isBegun(draft, group)
	return (
		<Box sx={{ display: 'grid', gap: 1.5, py: 1 }}>
			<ToggleButtonGroup
				exclusive
				aria-label="Result"
				value={form.result}
				onChange={(_, result: OutcomeTyped['result']) => set({ ...form, result })}
			>
				{outcomeResults.map((result) => (
					<ToggleButton key={result} value={result} sx={{ px: 2, textTransform: 'none' }}>
						{capital(result)}
					</ToggleButton>
				))}
			</ToggleButtonGroup>
			{words.map(({ key, label, most }) => (
				<TextField
					key={key}
					size="small"
					label={label}
					value={form[key]}
					onChange={({ target }) => set({ ...form, [key]: target.value })}
					slotProps={{ htmlInput: { maxLength: most, autoComplete: 'off' } }}
				/>
			))}
			<DateField label="On" size="small" value={form.on} set={(on) => set({ ...form, on })} />
			<Lifts group={group} form={form} set={set} />
			<Box>
				<Button variant="outlined" onClick={record}>
					Record the outcome
				</Button>
				{begun ? (
					<Button sx={{ ml: 1 }} onClick={() => set(blankOutcome(draft))}>
						Clear the form
					</Button>
				) : null}
				{tried && missing ? (
					<Typography role="alert" variant="body2" sx={{ color: 'error.main', mt: 0.5 }}>
						{missing}
					</Typography>
				) : null}
			</Box>
		</Box>
	)
}
