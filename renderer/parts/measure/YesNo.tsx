/** A question of the visit: yes, no, or not asked; y and n answer it. */
import { ToggleButton, ToggleButtonGroup } from '@mui/material'
import { readPath, withValue } from '../draft-path.ts'
import { type FieldProps, nameOf } from './fieldState.ts'

const notAsked = 'not-asked'
const answers: Readonly<Record<string, boolean | undefined>> = { yes: true, no: false }
function answerOf(value: unknown): string {
	if (value === undefined) return notAsked
	return value ? 'yes' : 'no'
}
export function YesNo({ path, draft, change }: FieldProps) {
	return (
		<ToggleButtonGroup
			exclusive
			data-walk=""
			size="small"
			aria-label={nameOf(path)}
			value={answerOf(readPath(draft.visit, path))}
			onChange={(_, next: string | null) =>
				next && change((now) => withValue(now, path, answers[next]))
			}
			onKeyDown={(event) => {
				if (event.key === 'y' || event.key === 'n')
					change((now) => withValue(now, path, event.key === 'y'))
			}}
		>
			{/* an answer stands out, the lack of one does not */}
			<ToggleButton
				value={notAsked}
				sx={{
					'&.Mui-selected, &.Mui-selected:hover': {
						bgcolor: 'action.selected',
						color: 'text.primary',
					},
				}}
			>
				Not asked
			</ToggleButton>
			<ToggleButton value="no">No</ToggleButton>
			<ToggleButton value="yes" color="error">
				Yes
			</ToggleButton>
		</ToggleButtonGroup>
	)
}
