/** A foot measured swollen or acutely injured: its size is recorded, and nothing is bought by it. */
import type { FootSizing, PerSide, PlayerFacts } from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { commonPractice } from '../protocol/basis.ts'
import { bothSides } from '../visit/sides.ts'
import { state } from '../words/statement.ts'

/** One for each measured foot that is acutely injured. */
export const swollenFindings = (
	feet: PerSide<FootSizing>,
	facts: PlayerFacts | undefined,
): Finding[] =>
	bothSides.flatMap((side) => {
		const { lengthMm, widthMm, girthMm } = feet[side]
		const because = facts?.[side].acute ?? []
		const measured = [lengthMm, widthMm, girthMm].some((value) => value !== undefined)
		if (!measured || because.length === 0) return []
		return [
			findingOf(state('sizing.not-for-buying', { side }), {
				side,
				level: 'caution',
				because: [...because],
				basis: { rule: 'size of an injured foot', ...commonPractice },
			}),
		]
	})
