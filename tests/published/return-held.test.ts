/** The way back to load is silent while load is held: the gate of the visit. */
import { expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Holdable } from '../../shared/engine/findings/assessment.ts'
import { loading } from '../../shared/engine/loading/loading.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { has, visitWith } from './known-insert.ts'

const back = visitWith({
	conditions: [has('navicular-stress-fracture', 'left', 'recovering')],
	play: { code: 'association', organisedHoursPerWeek: 6 },
})
const stepsWith = (...whats: Holdable[]) =>
	loading(back, openProtocol(), {
		...openGate,
		person: {
			...openGate.person,
			holds: whats.map((what) => ({
				what,
				rule: 'bone-stress-recovering',
				until: 'treating-doctor' as const,
				since: '2027-01-20',
			})),
		},
	}).returnSteps
it.each([
	[[], true],
	[['match'], true],
	[['purchase'], true],
	[['impact'], false],
	[['sport'], false],
	[['exercise'], false],
] as const)('%j held: the steps are laid out: %s', (whats, wanted) =>
	expect(stepsWith(...whats) !== undefined).toBe(wanted),
)
it('a healing stress fracture has no steps until the treating doctor allows impact', () => {
	expect(assess(back).loading.returnSteps).toBeUndefined()
	expect(assess(back).findings.map(({ code }) => code)).not.toContain('loading.return-steps')
	const cleared = assess({
		...back,
		outcomes: [
			{
				rule: 'bone-stress-recovering',
				side: 'left',
				result: 'recovered',
				found: 'The fracture has healed.',
				how: 'Seen and filmed',
				by: 'A. Example',
				on: '2027-01-20',
				treatingDoctorClears: true,
				lifts: ['match', 'impact'],
			},
		],
	})
	expect(cleared.loading.returnSteps!.length).toBeGreaterThan(1)
})
