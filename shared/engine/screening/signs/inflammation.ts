/** Inflammatory joint disease. */
import { state } from '../../words/statement.ts'
import { above, anyOf } from '../answers.ts'
import { type SignRow, signOfPerson } from './sign-row.ts'

export const inflammationSigns: readonly SignRow[] = [
	signOfPerson('inflammatory', 'inflammatory', {
		holds: ({ morningStiffnessMin, bothHeels, swollenToe, skinNailEye }, { protocol }) =>
			anyOf(
				above(morningStiffnessMin, protocol.value('screening.morningStiffnessMin')),
				bothHeels,
				swollenToe,
				skinNailEye,
			),
		action: 'letter',
		says: (_, { protocol }) =>
			state('screening.inflammatory', {
				minutes: protocol.value('screening.morningStiffnessMin'),
			}),
		ground: { key: 'screening.morningStiffnessMin' },
	}),
]
