/** The same group by group: outside of the walk by Enter, since one key takes all. */
import { ToggleButton, ToggleButtonGroup } from '@mui/material'
import type { TakenGroup } from '../../../../shared/engine/visit/terms.ts'

interface ChosenProps {
	groups: readonly { group: TakenGroup; name: string }[]
	taken: readonly TakenGroup[]
	put: (groups: readonly TakenGroup[]) => void
}
export const Chosen = ({ groups, taken, put }: ChosenProps) => (
	<ToggleButtonGroup
		aria-label="Unchanged"
		value={[...taken]}
		onChange={(_, next: readonly TakenGroup[]) =>
			put(groups.flatMap(({ group }) => (next.includes(group) ? [group] : [])))
		}
		sx={{ flexWrap: 'wrap' }}
	>
		{groups.map(({ group, name }) => (
			<ToggleButton key={group} value={group} sx={{ px: 1.25, py: 0.5, lineHeight: 1.3 }}>
				{name}
			</ToggleButton>
		))}
	</ToggleButtonGroup>
)
