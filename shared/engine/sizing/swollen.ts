/** A foot measured swollen or acutely injured: its size is recorded, and nothing is bought by it. */
import { swollenReasons } from '../facts/swollen.ts'
import type { PlayerFacts } from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { commonPractice } from '../protocol/basis.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

/** One for each measured foot that is acutely injured. */
export const swollenFindings = (visit: Visit, facts: PlayerFacts | undefined): Finding[] =>
	bothSides.flatMap((side) => {
		const because = swollenReasons(visit, facts?.[side].acute ?? [], side)
		if (because.length === 0) return []
		return [
			findingOf(state('sizing.not-for-buying', { side }), {
				side,
				level: 'caution',
				because,
				basis: { rule: 'size of an injured foot', ...commonPractice },
			}),
		]
	})
