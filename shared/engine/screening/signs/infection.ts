/** Infection of a joint, of the skin, of a nail or blister. */
import { state } from '../../words/statement.ts'
import { allOf, anyOf } from '../answers.ts'
import { type SignRow, signOfSide } from './sign-row.ts'
import { fromMemory, limpGuidelines } from './sources.ts'

export const infectionSigns: readonly SignRow[] = [
	signOfSide('infection', 'infected-joint', {
		holds: ({ hotSwollenJoint }) => hotSwollenJoint,
		action: 'same-day',
		says: () => state('screening.infected-joint'),
		ground: limpGuidelines,
	}),
	signOfSide('infection', 'infected-skin', {
		holds: ({ spreadingRedness }) => spreadingRedness,
		action: 'same-day',
		says: () => state('screening.infected-skin'),
		ground: fromMemory,
	}),
	signOfSide('infection', 'infection-ill', {
		holds: ({ hotSwollenJoint, spreadingRedness, infectedNailOrBlister, generallyIll }) =>
			allOf(anyOf(hotSwollenJoint, spreadingRedness, infectedNailOrBlister), generallyIll),
		action: 'emergency',
		says: () => state('screening.infection-ill'),
		ground: fromMemory,
	}),
	signOfSide('infection', 'infected-nail', {
		holds: ({ infectedNailOrBlister }) => infectedNailOrBlister,
		action: 'letter',
		says: (_, { protocol }) =>
			state('screening.infected-nail', {
				days: protocol.value('screening.infectedNailAgainDays'),
			}),
		ground: fromMemory,
	}),
]
