/** A lump, or bone pain without a reason. */
import { state } from '../../words/statement.ts'
import { type SignRow, signOfSide, youngImaging } from './sign-row.ts'
import { cancerGuideline } from './sources.ts'

export const tumourSigns: readonly SignRow[] = [
	signOfSide('tumour', 'bone-pain-unexplained', {
		holds: ({ unexplainedBonePain }) => unexplainedBonePain,
		action: 'letter',
		minorAction: 'imaging',
		says: (_, context) => state('screening.bone-pain-unexplained', youngImaging(context)),
		ground: cancerGuideline,
	}),
	signOfSide('tumour', 'bone-pain-persistent', {
		holds: ({ mostDaysForTwoWeeks }) => mostDaysForTwoWeeks,
		action: 'letter',
		minorAction: 'imaging',
		says: (_, context) => state('screening.bone-pain-persistent', youngImaging(context)),
		ground: cancerGuideline,
	}),
	signOfSide('tumour', 'lump', {
		holds: ({ enlargingLump }) => enlargingLump,
		action: 'imaging',
		says: (_, context) =>
			state('screening.lump', {
				...youngImaging(context),
				weeks: context.protocol.value('screening.lumpAdultWeeks'),
			}),
		ground: cancerGuideline,
	}),
]
