/** Adding a warning sign never lowers the action. */
import { expect, it } from 'vitest'
import { actions } from '../../shared/assessment.ts'
import { openProtocol } from '../../shared/protocol/protocol.ts'
import { flagRows } from '../../shared/screening/flags.ts'
import { screening } from '../../shared/screening/screening.ts'
import type { Screening, Visit } from '../../shared/visit/visit.ts'

const protocol = openProtocol()
const rank = (answers: Screening, birthDate: string) => actions.indexOf(screening({ format: 'lastwright-visit', version: 1, player: { givenName: 'A', familyName: 'B', birthDate, sex: 'female' }, visitDate: '2027-01-20', screening: answers } satisfies Visit, protocol).action)
it('holds for every pair of signs, with an injury, at every age', () => {
	const injury = { side: 'right', malleolarZonePain: true, tenderLateralMalleolus: false, tenderMedialMalleolus: false, unableToBearWeightThen: true, unableToBearWeightNow: true } as const
	for (const birth of ['2023-01-01', '2014-01-01', '1990-01-01'])
		for (const base of [{}, { injury }])
			for (const first of flagRows) for (const second of flagRows) {
				const before = { ...base, [first.key]: true }
				expect(rank({ ...before, [second.key]: true }, birth)).toBeGreaterThanOrEqual(rank(before, birth))
				expect(rank(before, birth)).toBeGreaterThan(0)
			}
})
