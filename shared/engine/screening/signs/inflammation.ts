/** Inflammatory joint disease. */
import { above, anyOf } from '../answers.ts'
import { type SignRow, signOfPerson } from './sign-row.ts'

export const inflammationSigns: readonly SignRow[] = [
	signOfPerson('inflammatory', {
		id: 'inflammatory',
		holds: ({ morningStiffnessMin, bothHeels, swollenToe, skinNailEye }, { protocol }) =>
			anyOf(
				above(morningStiffnessMin, protocol.value('screening.morningStiffnessMin')),
				bothHeels,
				swollenToe,
				skinNailEye,
			),
		action: 'letter',
		says:
			'Long morning stiffness, both heels painful, a whole toe swollen, or skin, nail or ' +
			'eye signs: write to the doctor about inflammatory disease.',
		ground: { key: 'screening.morningStiffnessMin' },
	}),
]
