/** A day of the visit, typed in any clear form. */
import { DateField } from '../DateField.tsx'
import { withRaw, withValue } from '../draft-path.ts'
import { parseDate } from '../parseDate.ts'
import { type FieldProps, nameOf, storedText } from './fieldState.ts'

export function Day(field: FieldProps) {
	const { path, change } = field
	return (
		<DateField
			label=""
			name={nameOf(path)}
			size="small"
			value={storedText(field)}
			set={(next) =>
				change((now) => {
					if (next.trim() === '') return withValue(now, path, undefined)
					return parseDate(next).ok ? withValue(now, path, next) : withRaw(now, path, next)
				})
			}
		/>
	)
}
