/**
 * A form of this room as the properties of its box; what it sends is asked for here, never by the
 * browser.
 */
import type { FormEvent } from 'react'

export const form = (submit: () => void) => ({
	component: 'form' as const,
	noValidate: true,
	sx: { display: 'grid', gap: 2 },
	onSubmit: (event: FormEvent) => {
		event.preventDefault()
		submit()
	},
})
