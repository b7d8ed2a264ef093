/** When calf stretching is put forward: common practice, no source. */
import { expect, it } from 'vitest'
import { mayStretchCalf } from '../../shared/engine/asked/stretching.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { has, visitWith } from './known-insert.ts'

it.each([
	[{}, true],
	[{ conditions: [has('achilles-midportion')] }, true],
	[{ conditions: [has('achilles-insertional', 'right')] }, false],
	[{ conditions: [has('achilles-insertional', 'right', 'past')] }, true],
	[{ conditions: [has('haglund-deformity')] }, false],
	[{ conditions: [has('calf-strain')] }, false],
	[{ conditions: [has('anterior-ankle-impingement')] }, false],
	[{ screening: { achilles: { side: 'left', gap: true } } }, false],
	[{ screening: { calfSuspicion: true } }, false],
] as const)('%j: %s', (more, wanted) => {
	const visit = visitWith(more as unknown as Partial<Visit>)
	expect(mayStretchCalf(visit, assess(visit).prescription.gate)).toBe(wanted)
})
