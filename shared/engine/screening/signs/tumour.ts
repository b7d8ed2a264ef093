/** A lump, or bone pain without a reason. */
import { type SignRow, signOfSide } from './sign-row.ts'
import { cancerGuideline } from './sources.ts'

export const tumourSigns: readonly SignRow[] = [
	signOfSide('tumour', {
		id: 'bone-pain-unexplained',
		holds: ({ unexplainedBonePain }) => unexplainedBonePain,
		action: 'letter',
		minorAction: 'imaging',
		says:
			'Unexplained bone pain or bony swelling: through the doctor the same day, in a ' +
			'young player an X-ray within 48 hours. That it does not hurt at night is no ' +
			'reassurance.',
		ground: cancerGuideline,
	}),
	signOfSide('tumour', {
		id: 'bone-pain-persistent',
		holds: ({ mostDaysForTwoWeeks }) => mostDaysForTwoWeeks,
		action: 'letter',
		minorAction: 'imaging',
		says:
			'Bone pain on most days for two weeks or more: through the doctor, in a young ' +
			'player a blood count within 48 hours.',
		ground: cancerGuideline,
	}),
	signOfSide('tumour', {
		id: 'lump',
		holds: ({ enlargingLump }) => enlargingLump,
		action: 'imaging',
		says:
			'A lump that grows: ultrasound through the doctor, within 48 hours in a young ' +
			'player and two weeks in an adult.',
		ground: cancerGuideline,
	}),
]
