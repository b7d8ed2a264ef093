/** What the ankle room says. */
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, number } from './format.ts'

type LimitedBy = 'gastrocnemius' | 'soleus-or-capsule' | 'anterior-block' | 'none' | 'unknown'
const limitWords: Partial<Record<LimitedBy, string>> = {
	gastrocnemius: ' The gap between knee bent and knee straight points to the gastrocnemius.',
	'soleus-or-capsule':
		' The pattern points to the soleus or the joint capsule, not to the gastrocnemius alone.',
	'anterior-block':
		' The end feel points to a block at the front of the ankle: do not stretch into pain, and ' +
		'consider imaging.',
}
export const ankleSentences = {
	'ankle.restricted': sentence<{ side: Side; limitedBy: LimitedBy }>({
		clinician: ({ side, limitedBy }) =>
			`The ${side} ankle bends less than the cut-off in use.${limitWords[limitedBy] ?? ''}`,
		player: ({ side }) => `Your ${side} ankle does not bend as far as most.`,
	}),
	'ankle.front-end-feel': sentence<{ side: Side; rangeIsAdequate: boolean }>({
		clinician: ({ side, rangeIsAdequate }) =>
			`The ${side} ankle stops at the front` +
			`${rangeIsAdequate ? ' although its range is adequate' : ''}: do not stretch into pain.`,
		player: ({ side }) => `Your ${side} ankle stops at the front. Do not stretch into pain.`,
	}),
	'ankle.pair': sentence<{ side: Side; lungeCm: number; lungeDeg: number; expectedDeg: number }>({
		clinician: ({ side, lungeCm, lungeDeg, expectedDeg }) =>
			`The ${side} lunge readings do not fit each other: ${amount(lungeCm, 'cm')} would be near ` +
			`${amount(expectedDeg, 'deg')}, ${number(lungeDeg)} was entered. Check both.`,
	}),
}
/** Names of its numbers that are no measure of the visit. */
export const ankleReadings = {
	expectedLungeDeg: 'angle expected from the geometry',
}
