/** Signs to stop at that page one had no room for. */
import { heading, type Section } from '../base.ts'
import { furtherSigns } from '../page-one/call.ts'

export const moreSigns: Section = (input, _notes, t) => {
	const items = furtherSigns(input)
	return items.length === 0 ? [] : [heading(t('pageOne.moreSigns')), { kind: 'list', items }]
}
