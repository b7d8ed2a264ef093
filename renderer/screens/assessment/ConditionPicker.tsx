/** Choosing conditions by any of their names, and features of a shoe from their list. */
import { Autocomplete, Box, TextField, Typography } from '@mui/material'
import { type KeyboardEvent, useMemo, useState } from 'react'
import { ageDoubt } from '../../../shared/engine/conditions/ages.ts'
import { findConditions } from '../../../shared/engine/conditions/find.ts'
import {
	type Condition,
	conditions,
	type Feature,
	features,
	termWords,
} from '../../../shared/engine/visit/terms.ts'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'

/** The Enter that chose from the list does not also go on to the next field. */
const keepEnter = (event: KeyboardEvent): void => {
	if (event.key === 'Enter' && event.isDefaultPrevented()) event.stopPropagation()
}
/** The name that led to an option, where it is not the one shown. */
function whyOf(condition: Condition, typed: string): string {
	const found = findConditions(typed).find((fit) => fit.condition === condition)
	return found === undefined || found.listed ? '' : `also called: ${found.fits}`
}
/** What is usual at this age stands first: the first is what Enter takes. */
function foundFor(typed: string, ageYears: number): Condition[] {
	const found = findConditions(typed)
	const isUnusual = ({ condition, whole }: (typeof found)[number]) =>
		!whole && ageDoubt(condition, ageYears, clinicProtocol) !== undefined
	return [...found.filter((one) => !isUnusual(one)), ...found.filter(isUnusual)].map(
		({ condition }) => condition,
	)
}
interface PickerProps {
	/** Whole years on the day of the visit. */
	ageYears: number
	/** Told the condition; the field is then empty again. */
	choose: (condition: Condition) => void
}
export function ConditionPicker({ ageYears, choose }: PickerProps) {
	const [typed, setTyped] = useState('')
	const [here, setHere] = useState(false)
	return (
		<Box onKeyDown={keepEnter}>
			<Autocomplete
				options={conditions}
				value={null}
				inputValue={typed}
				autoHighlight
				slotProps={{ paper: { variant: 'outlined', sx: { borderColor: 'text.secondary' } } }}
				noOptionsText="No condition has this name: choose another condition and write it in words."
				filterOptions={(_, { inputValue }) => foundFor(inputValue, ageYears)}
				getOptionLabel={termWords}
				// what was typed stays when the field is left: nothing was chosen yet
				clearOnBlur={false}
				onInputChange={(_, text, reason) =>
					setTyped(reason === 'input' || reason === 'clear' ? text : '')
				}
				onFocus={() => setHere(true)}
				onBlur={() => setHere(false)}
				onChange={(_, chosen) => chosen && choose(chosen)}
				renderOption={({ key, ...option }, condition) => {
					const why = whyOf(condition, typed)
					return (
						<Box component="li" key={key} {...option} sx={{ minHeight: 44, flexWrap: 'wrap' }}>
							<Box component="span" sx={{ pr: 1.5 }}>
								{termWords(condition)}
							</Box>
							{why ? (
								<Typography component="span" variant="body2" color="text.secondary">
									{why}
								</Typography>
							) : null}
						</Box>
					)
				}}
				renderInput={(input) => (
					<TextField
						{...input}
						slotProps={{
							...input.slotProps,
							htmlInput: { ...input.slotProps?.htmlInput, 'data-picker': '' },
						}}
						label="Add a condition"
						placeholder="Type a name, for instance bunion"
						size="small"
						helperText={
							typed.trim() !== '' && !here && 'Not recorded yet: choose it from the list.'
						}
					/>
				)}
			/>
		</Box>
	)
}
/** @param without features that cannot be chosen, as they stand in the other list */
export function FeaturePicker({
	label,
	chosen,
	without,
	choose,
}: {
	label: string
	chosen: readonly Feature[]
	without: readonly Feature[]
	choose: (features: Feature[] | undefined) => void
}) {
	const [typed, setTyped] = useState('')
	// a list that is new at every drawing would take away what is being typed
	const value = useMemo(() => [...chosen], [chosen])
	return (
		<Box onKeyDown={keepEnter} sx={{ py: 0.5 }}>
			<Autocomplete
				multiple
				disableCloseOnSelect
				autoHighlight
				options={features.filter((feature) => !without.includes(feature))}
				value={value}
				inputValue={typed}
				onInputChange={(_, text, reason) => reason !== 'reset' && setTyped(text)}
				getOptionLabel={termWords}
				onChange={(_, next) => choose(next.length > 0 ? next : undefined)}
				renderInput={(input) => <TextField {...input} label={label} size="small" />}
			/>
		</Box>
	)
}
