/** Blood supply of the foot, and pressure in the leg. */
import { state } from '../../words/statement.ts'
import { allOf } from '../answers.ts'
import { type Ground, type SignRow, signOfEachFoot, signOfPerson } from './sign-row.ts'
import { fromMemory } from './sources.ts'

const diabeticFootGuideline: Ground = { source: 'NICE NG19', strength: 'guideline' }
export const bloodSupplySigns: readonly SignRow[] = [
	signOfEachFoot('vascular', 'pulses', {
		holds: ({ noDorsalisPedis, noPosteriorTibial }) => allOf(noDorsalisPedis, noPosteriorTibial),
		action: 'letter',
		says: () => state('screening.pulses'),
		ground: diabeticFootGuideline,
	}),
	signOfEachFoot('vascular', 'pressure-index', {
		holds: ({ anklePressureIndex }, { protocol }) =>
			anklePressureIndex === undefined
				? undefined
				: anklePressureIndex < protocol.value('screening.anklePressureIndex'),
		action: 'letter',
		says: (_, { protocol }) =>
			state('screening.pressure-index', {
				limit: protocol.value('screening.anklePressureIndex'),
			}),
		ground: { key: 'screening.anklePressureIndex' },
	}),
	signOfEachFoot('vascular', 'rest-pain', {
		holds: ({ restPain }) => restPain,
		action: 'emergency',
		says: () => state('screening.rest-pain'),
		ground: diabeticFootGuideline,
	}),
	signOfPerson('vascular', 'compartment', {
		holds: ({ tightLegWithFootDrop }) => tightLegWithFootDrop,
		action: 'emergency',
		says: () => state('screening.compartment'),
		ground: fromMemory,
	}),
]
