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
type OfItem = Pick<OutboxView, 'state' | 'sending' | 'breachId'>
/** What went to the wrong one is never shown as plainly sent. */
function words({ state, sending, breachId }: OfItem): string {
	if (sending) return 'Being sent'
	if (breachId === undefined) return stateWords[state]
	return state === 'sent' ? 'Sent in error' : `${stateWords[state]}, sent in error`
}
export function StateChip({ item }: { item: OfItem }) {
	const color = item.breachId ? 'error' : tone[item.state]
	return <Chip size="small" variant="outlined" {...(color ? { color } : {})} label={words(item)} />
}
