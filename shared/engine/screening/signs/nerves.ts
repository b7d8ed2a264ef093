/** Feeling and strength: numbness, and what must not wait. */
import { anyOf, not } from '../answers.ts'
import { type SignRow, signOfEachFoot, signOfPerson } from './sign-row.ts'
import { fromMemory } from './sources.ts'

export const nerveSigns: readonly SignRow[] = [
	signOfEachFoot('neurological', {
		id: 'monofilament',
		holds: ({ feltHallux, feltFirstHead, feltFifthHead }) =>
			anyOf(not(feltHallux), not(feltFirstHead), not(feltFifthHead)),
		action: 'letter',
		says:
			'Monofilament not felt at one or more of the three sites: protective feeling is ' +
			'reduced. Write to the doctor; no insert and no new footwear without review. Never ' +
			'test on callus.',
		notMet:
			'Monofilament felt at the three sites. The test misses about half of nerve trouble: ' +
			'repeat it if numbness is reported.',
		ground: {
			source: 'NHS England foot screen (pooled sensitivity about .53)',
			strength: 'guideline',
		},
	}),
	signOfPerson('neurological', {
		id: 'nerve-worse',
		holds: ({ gettingWorse, saddleOrBladder }) => anyOf(gettingWorse, saddleOrBladder),
		action: 'emergency',
		says:
			'Loss of feeling or strength that is getting worse, or saddle numbness or bladder ' +
			'change: emergency department now.',
		ground: fromMemory,
	}),
]
