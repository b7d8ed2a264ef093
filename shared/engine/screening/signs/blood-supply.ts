/** Blood supply of the foot, and pressure in the leg. */
import { allOf } from '../answers.ts'
import { type Ground, type SignRow, signOfEachFoot, signOfPerson } from './sign-row.ts'
import { fromMemory } from './sources.ts'

const diabeticFootGuideline: Ground = { source: 'NICE NG19', strength: 'guideline' }
export const bloodSupplySigns: readonly SignRow[] = [
	signOfEachFoot('vascular', {
		id: 'pulses',
		holds: ({ noDorsalisPedis, noPosteriorTibial }) => allOf(noDorsalisPedis, noPosteriorTibial),
		action: 'letter',
		says:
			'Neither foot pulse is felt: write to the doctor about the blood supply, with an ' +
			'ankle pressure reading.',
		ground: diabeticFootGuideline,
	}),
	signOfEachFoot('vascular', {
		id: 'pressure-index',
		holds: ({ anklePressureIndex }, { protocol }) =>
			anklePressureIndex === undefined
				? undefined
				: anklePressureIndex < protocol.value('screening.anklePressureIndex'),
		action: 'letter',
		says:
			'Ankle-brachial pressure index below the limit: write to the doctor about the blood ' +
			'supply.',
		ground: { key: 'screening.anklePressureIndex' },
	}),
	signOfEachFoot('vascular', {
		id: 'rest-pain',
		holds: ({ restPain }) => restPain,
		action: 'emergency',
		says:
			'Pain at rest in a cold or pale foot: blood supply must be checked at once in an ' +
			'emergency department.',
		ground: diabeticFootGuideline,
	}),
	signOfPerson('vascular', {
		id: 'compartment',
		holds: ({ tightLegWithFootDrop }) => tightLegWithFootDrop,
		action: 'emergency',
		says:
			'Tight, painful leg with numb foot or foot drop now: compartment pressure, ' +
			'emergency department now.',
		ground: fromMemory,
	}),
]
