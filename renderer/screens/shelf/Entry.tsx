/** One entry of the form, its kind, title, unit and choices by the schema. */
import { TextField } from '@mui/material'
import { type FieldMeta, fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { modelSchema } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { shownUnit } from './readModel.ts'

interface EntryProps {
	path: string
	value: string
	set: (text: string) => void
	error: string | undefined
	question: string | undefined
	/** in a table: the column says the title, this the row */
	rowName?: string
	placeholder?: string | undefined
}
/** 'Mass of one shoe (g)'. */
export function titleWithUnit(path: string): string {
	const meta = fieldMeta(modelSchema, path)
	const unit = shownUnit(meta)
	return `${meta.title}${unit ? ` (${unit})` : ''}`
}
/** What can be chosen; undefined where it is typed. */
function optionsOf(meta: FieldMeta): readonly string[] | undefined {
	if (meta.kind === 'yesNo') return ['yes', 'no']
	return meta.kind === 'choice' ? meta.options : undefined
}
/** The words of choosing nothing; undefined where something always stands there. */
function nothingWords(path: string): string | undefined {
	if (path.endsWith('removable')) return undefined
	return path === 'sole' || path.includes('.') ? 'Choose' : 'Not recorded'
}

export function Entry({ path, value, set, error, question, rowName, placeholder }: EntryProps) {
	const meta = fieldMeta(modelSchema, path)
	const options = optionsOf(meta)
	const told = error ?? question
	return (
		<TextField
			fullWidth
			size="small"
			value={value}
			error={Boolean(error)}
			helperText={told ?? (rowName ? undefined : ' ')}
			select={Boolean(options)}
			placeholder={placeholder}
			label={rowName ? undefined : titleWithUnit(path)}
			onChange={(event) => set(event.target.value)}
			slotProps={{
				inputLabel: { shrink: true },
				select: { native: true },
				htmlInput: {
					'aria-label': rowName ? `${meta.title}, ${rowName}` : undefined,
					autoComplete: 'off',
					spellCheck: false,
					// a stud's place may be typed with its unit
					inputMode: meta.kind === 'number' && !path.startsWith('studs') ? 'decimal' : undefined,
				},
				formHelperText: {
					role: told ? 'alert' : undefined,
					sx: question && !error ? { color: 'warning.main' } : {},
				},
			}}
		>
			{options && <Options options={options} nothing={nothingWords(path)} />}
		</TextField>
	)
}

interface OptionsProps {
	options: readonly string[]
	nothing: string | undefined
}
function Options({ options, nothing }: OptionsProps) {
	return (
		<>
			{nothing && <option value="">{nothing}</option>}
			{options.map((option) => (
				<option key={option} value={option}>
					{termWords(option)}
				</option>
			))}
		</>
	)
}
