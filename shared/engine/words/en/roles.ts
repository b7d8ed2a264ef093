/** What is said of the pair of a role. */
import { sentence } from '../sentence.ts'
import { amount } from './format.ts'

export const rolesSentences = {
	/** The width to ask for: letters by scheme, and the wider foot. */
	'roles.width': sentence<{ us?: string; jis?: string; widthMm: number }>({
		clinician: ({ us, jis, widthMm }) =>
			[us && `US ${us}`, jis && `JIS ${jis}`, `foot ${amount(widthMm, 'mm')} wide at the ball`]
				.filter(Boolean)
				.join(', '),
	}),
}
