/** What is done to an insert that is worn, for whoever makes it and for the player. */
import type { Adjustment } from '../../visit/recorded/insert-worn.ts'
import type { InsertAct, InsertPlace } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { amount, capital, day } from './format.ts'
import { elementName } from './insert-names.ts'

export const insertPlaceNames: Readonly<Record<InsertPlace, string>> = {
	heel: 'heel',
	'inner-arch': 'inner arch',
	'outer-arch': 'outer arch',
	forefoot: 'forefoot',
	edge: 'edge',
	'slips-in-shoe': 'slips in the shoe',
	'too-thick': 'too thick for the boot',
	'worn-out': 'worn out',
	'top-cover': 'top cover',
}
export const insertActNames: Readonly<Record<InsertAct, string>> = {
	add: 'add',
	'take-off': 'take off',
	grind: 'grind',
	widen: 'widen',
	replace: 'replace',
	'maker-judges': 'for the laboratory to judge',
}
/** '1 mm', '1°'; empty where how much is left to whoever makes it. */
export const adjustmentAmount = ({ mm, deg }: Adjustment): string =>
	mm !== undefined ? amount(mm, 'mm') : deg !== undefined ? amount(deg, 'deg') : ''
/** What it is done to, where no element is named. */
const wholeOf = (place: InsertPlace): string => (place === 'edge' ? 'edge' : 'whole insert')
/** 'take off 1 deg: medial rearfoot post', 'add 3 mm: heel cushion', 'replace: cover'. */
export function adjustmentText(line: Adjustment): string {
	const { act, element, place, words } = line
	const much = adjustmentAmount(line)
	const what = element === undefined ? wholeOf(place) : elementName(element)
	const done =
		act === 'maker-judges'
			? insertActNames[act]
			: `${[insertActNames[act], much].filter(Boolean).join(' ')}: ${what}`
	return words === undefined ? done : `${done} (${words})`
}
/** 'left, heel: add 3 mm: heel cushion'. */
export const adjustmentLine = (line: Adjustment): string =>
	`${line.side}, ${insertPlaceNames[line.place]}: ${adjustmentText(line)}`
const playerPlaces: Readonly<Record<InsertPlace, string>> = {
	heel: 'at the heel',
	'inner-arch': 'under the inner arch',
	'outer-arch': 'under the outer arch',
	forefoot: 'under the front of the foot',
	edge: 'at its edge',
	'slips-in-shoe': 'so that it no longer slips',
	'too-thick': 'so that it takes less room',
	'worn-out': 'as it is worn out',
	'top-cover': 'on its top',
}
const playerActs: Readonly<Record<InsertAct, string>> = {
	add: 'is made softer',
	'take-off': 'is made lower',
	grind: 'is made thinner',
	widen: 'gets more space',
	replace: 'gets a new part',
	'maker-judges': 'is looked at',
}
const forPlayer = ({ side, place, act }: Adjustment): string =>
	place === 'worn-out'
		? `The ${side} insert is made new.`
		: `The ${side} insert ${playerActs[act]} ${playerPlaces[place]}.`

export const adjustSentences = {
	'insert.adjust': sentence<{ line: Adjustment }>({
		clinician: ({ line }) => `${capital(adjustmentLine(line))}.`,
		laboratory: ({ line }) => `${capital(adjustmentLine(line))}.`,
		player: ({ line }) => forPlayer(line),
	}),
	'insert.adjust-still-called-for': sentence<{ element: string }>({
		clinician: ({ element }) =>
			`Findings of today still call for it: the ${elementName(element)} does less afterwards.`,
	}),
	'insert.adjust-thin-shell': sentence<{ leastMm: number }>({
		clinician: ({ leastMm }) =>
			`A thinner shell bends more and can break; boots take one of ${amount(leastMm, 'mm')} at least.`,
		laboratory: ({ leastMm }) => `Not below ${amount(leastMm, 'mm')}.`,
	}),
	'insert.adjust-done-before': sentence<{ on: string; line: Adjustment }>({
		clinician: ({ on, line }) => `Done there on ${day(on)}: ${adjustmentText(line)}.`,
		laboratory: ({ on, line }) => `Done there on ${day(on)}: ${adjustmentText(line)}.`,
	}),
}
