/** Infection of a joint, of the skin, of a nail or blister. */
import { allOf, anyOf } from '../answers.ts'
import { type SignRow, signOfSide } from './sign-row.ts'
import { fromMemory, limpGuidelines } from './sources.ts'

export const infectionSigns: readonly SignRow[] = [
	signOfSide('infection', {
		id: 'infected-joint',
		holds: ({ hotSwollenJoint }) => hotSwollenJoint,
		action: 'same-day',
		says: 'Hot, swollen joint: an infected joint must be excluded the same day.',
		ground: limpGuidelines,
	}),
	signOfSide('infection', {
		id: 'infected-skin',
		holds: ({ spreadingRedness }) => spreadingRedness,
		action: 'same-day',
		says: 'Spreading infection: medical review the same day, no insert and no boot on this foot.',
		ground: fromMemory,
	}),
	signOfSide('infection', {
		id: 'infection-ill',
		holds: ({ hotSwollenJoint, spreadingRedness, infectedNailOrBlister, generallyIll }) =>
			allOf(anyOf(hotSwollenJoint, spreadingRedness, infectedNailOrBlister), generallyIll),
		action: 'emergency',
		says: 'Infection and generally ill: emergency department now.',
		ground: fromMemory,
	}),
	signOfSide('infection', {
		id: 'infected-nail',
		holds: ({ infectedNailOrBlister }) => infectedNailOrBlister,
		action: 'letter',
		says:
			'Infected nail fold or blister: treat or refer; look again in two days, and the ' +
			'same day if redness spreads.',
		ground: fromMemory,
	}),
]
