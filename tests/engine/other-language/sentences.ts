/** A few codes of the rooms in German. */
import type { RoomSentences } from '../../../shared/engine/words/catalogue.ts'
import { sentence } from '../../../shared/engine/words/sentence.ts'

const sides = { left: 'linke', right: 'rechte' } as const
export const german = {
	'ankle.front-end-feel': sentence<{ side: 'left' | 'right'; rangeIsAdequate: boolean }>({
		clinician: ({ side, rangeIsAdequate }) =>
			`Das ${sides[side]} Sprunggelenk stoppt vorn` +
			`${rangeIsAdequate ? ', obwohl es weit genug beugt' : ''}: nicht in den Schmerz dehnen.`,
		player: ({ side }) => `Dein ${sides[side]}s Sprunggelenk stoppt vorn.`,
	}),
} satisfies Partial<RoomSentences>
