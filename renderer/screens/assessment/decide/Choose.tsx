/** Accept, change or drop: the choice about one finding or feature. */
import { ToggleButton, ToggleButtonGroup } from '@mui/material'
import type { Choice } from './decisions.ts'

const choices: readonly { choice: Choice; title: string }[] = [
	{ choice: 'accept', title: 'Accept' },
	{ choice: 'change', title: 'Change' },
	{ choice: 'drop', title: 'Drop' },
]

/** Characters of what is decided that its name for a screen reader holds. */
const longestName = 60

interface ChooseProps {
	/** What is decided, in words. */
	about: string
	value: Choice | undefined
	/** null takes the choice back. */
	set: (choice: Choice | null) => void
	/** A choice that is not offered here. */
	without?: Choice
}
export function Choose({ about, value, set, without }: ChooseProps) {
	const name = about.length > longestName ? `${about.slice(0, longestName).trimEnd()}...` : about
	return (
		<ToggleButtonGroup
			exclusive
			size="small"
			color="primary"
			aria-label={`Decision: ${name}`}
			value={value ?? null}
			onChange={(_event, choice: Choice | null) => set(choice)}
		>
			{choices
				.filter(({ choice }) => choice !== without)
				.map(({ choice, title }) => (
					<ToggleButton key={choice} value={choice} sx={{ minHeight: 44, px: 2 }}>
						{title}
					</ToggleButton>
				))}
		</ToggleButtonGroup>
	)
}
