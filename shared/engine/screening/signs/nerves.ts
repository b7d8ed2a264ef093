/** Feeling and strength: numbness, and what must not wait. */
import { state } from '../../words/statement.ts'
import { anyOf, not } from '../answers.ts'
import { type SignRow, signOfEachFoot, signOfPerson } from './sign-row.ts'
import { fromMemory } from './sources.ts'

export const nerveSigns: readonly SignRow[] = [
	signOfEachFoot('neurological', 'monofilament', {
		holds: ({ feltHallux, feltFirstHead, feltFifthHead }) =>
			anyOf(not(feltHallux), not(feltFirstHead), not(feltFifthHead)),
		action: 'letter',
		says: () => state('screening.monofilament'),
		notMet: () => state('screening.monofilament-not-met'),
		ground: {
			source: 'NHS England foot screen (pooled sensitivity about .53)',
			strength: 'guideline',
		},
	}),
	signOfPerson('neurological', 'nerve-worse', {
		holds: ({ gettingWorse, saddleOrBladder }) => anyOf(gettingWorse, saddleOrBladder),
		action: 'emergency',
		says: () => state('screening.nerve-worse'),
		ground: fromMemory,
	}),
]
