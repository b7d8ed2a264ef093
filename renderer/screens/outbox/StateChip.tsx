/** The state of an item, in words and colour. */
import { Chip } from '@mui/material'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { stateWords } from '../../../shared/desk/outbox/item.ts'

const tone: Partial<Record<OutboxView['state'], 'warning' | 'error' | 'success' | 'primary'>> = {
	'to-check': 'primary',
	uncertain: 'error',
	returned: 'error',
	delivered: 'success',
}
export function StateChip({ item }: { item: Pick<OutboxView, 'state' | 'sending'> }) {
	return (
		<Chip
			size="small"
			variant="outlined"
			{...(tone[item.state] ? { color: tone[item.state] } : {})}
			label={item.sending ? 'Being sent' : stateWords[item.state]}
		/>
	)
}
