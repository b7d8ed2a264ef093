/** An injured ankle or foot: the Ottawa rules, and what lies beside them. */
import type { Side } from '../../../visit/visit.ts'
import { sentence } from '../../sentence.ts'
import { amount, listed, number } from '../format.ts'
import { noSport } from './no-sport.ts'

export type OttawaPart = 'ankle' | 'foot'
/** Why the rules cannot be used. */
export type OttawaBar =
	| 'too-young'
	| 'pregnant'
	| 'cannot-be-assessed'
	| 'swelling-or-open-skin'
	| 'reduced-sensation'
	| 'too-late'
type Bars = { because: readonly OttawaBar[]; minYears: number; maxDays: number }
const barWords = (
	{ because, minYears, maxDays }: Bars,
	{ withPrivate }: { withPrivate: boolean },
): string => {
	const words: Record<OttawaBar, string> = {
		'too-young': `under ${amount(minYears, 'years')}`,
		pregnant: 'pregnant',
		'cannot-be-assessed': 'cannot be assessed',
		'swelling-or-open-skin': 'swelling, open skin or seen before for it',
		'reduced-sensation': 'reduced sensation',
		'too-late': `more than ${amount(maxDays, 'days')} since the injury`,
	}
	const told = because.filter((bar) => withPrivate || bar !== 'pregnant')
	return told.length > 0 ? ` (${listed(told.map((bar) => words[bar]))})` : ''
}
type Place = { side: Side; part: OttawaPart }
type Again = { fromDays: number; toDays: number }
const again = ({ fromDays, toDays }: Again): string =>
	`${number(fromDays)} to ${amount(toDays, 'days')}`
const notMet = ({ part, fromDays, toDays }: Pick<Place, 'part'> & Again, on = ''): string =>
	`Ottawa ${part} rule not met${on}. This does not say that nothing is broken: look again in ` +
	`${again({ fromDays, toDays })}.`

export const injurySentences = {
	'screening.ottawa-met': sentence<Place>({
		clinician: ({ side, part }) =>
			`Ottawa ${part} rule met: X-ray of the ${side} ${part} the same day.`,
		player: ({ side, part }) =>
			`Have an X-ray of your ${side} ${part} today. A bone may be broken. Keep your weight off it ` +
			'until then.',
		guardian: ({ side, part }) =>
			`Have an X-ray of the ${side} ${part} today. A bone may be broken. No weight on it until then.`,
		doctor: ({ side, part }) =>
			`Ottawa ${part} rule met on the ${side} side; radiographs today, please.`,
		coach: noSport,
	}),
	'screening.ottawa-not-applicable': sentence<Place & Bars>({
		clinician: ({ part, ...bars }) =>
			`The Ottawa ${part} rule cannot be used${barWords(bars, { withPrivate: true })}: have the ` +
			'injury seen the same day.',
		player: ({ side, part }) =>
			`Have your ${side} ${part} seen by a doctor today. Our quick test does not work for you. ` +
			'Keep your weight off it until then.',
		guardian: ({ side, part }) =>
			`Have the ${side} ${part} seen by a doctor today. Our quick test does not work here. No weight ` +
			'on it until then.',
		doctor: ({ side, part, ...bars }) =>
			`Injury of the ${side} ${part}; the Ottawa rule is not applicable` +
			`${barWords(bars, { withPrivate: false })}. Please assess today.`,
		coach: noSport,
	}),
	'screening.ottawa-quiet': sentence<Place & Bars>({
		clinician: ({ part, ...bars }) =>
			`The Ottawa ${part} rule cannot be used${barWords(bars, { withPrivate: true })}. No pain, ` +
			'tenderness or loss of weight bearing is recorded.',
	}),
	'screening.ottawa-incomplete': sentence<Place>({
		clinician: ({ side, part }) =>
			`The Ottawa ${part} rule is incomplete for the ${side} side: a question is open, and an open ` +
			'question never counts as no. Complete it before going on.',
	}),
	'screening.ottawa-not-met': sentence<Place & Again>({
		clinician: ({ part, fromDays, toDays }) => notMet({ part, fromDays, toDays }),
		player: ({ side, part, fromDays, toDays }) =>
			`Nothing today points to a broken ${side} ${part}, but we cannot be sure. Come again in ` +
			`${again({ fromDays, toDays })}. Come sooner if it gets worse.`,
		doctor: ({ side, part }) => `Ottawa ${part} rule not met on the ${side} side.`,
	}),
	'screening.ottawa-not-met-minor': sentence<Place & Again & { found: number }>({
		clinician: ({ side, part, fromDays, toDays, found }) =>
			`${notMet({ part, fromDays, toDays }, ` on the ${side} side`)} In children and adolescents ` +
			`the rule found ${number(found)} of 100 fractures (Dowling 2009).`,
	}),
	'screening.ottawa-not-met-adult': sentence<Place & Again & { left: number; found: number }>({
		clinician: ({ side, part, fromDays, toDays, left, found }) =>
			`${notMet({ part, fromDays, toDays }, ` on the ${side} side`)} An older review leaves about ` +
			`${number(left)} fractures in 100 such players (Bachmann 2003); a review of 2022 found that ` +
			`the rule catches ${number(found)} of 100 in adults.`,
	}),
	'screening.newly-unable': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`Cannot take four steps now on the ${side} side: urgent imaging, although the Ottawa rule as ` +
			'answered does not ask for it.',
		player: ({ side }) =>
			`Keep your weight off your ${side} leg. You cannot walk on it now, so it needs a picture soon.`,
		guardian: ({ side }) =>
			`No weight on the ${side} leg. The player cannot walk on it now, so it needs a picture soon.`,
		doctor: ({ side }) =>
			`Newly unable to take four steps on the ${side} side; urgent imaging, please.`,
		coach: noSport,
	}),
	'screening.tender-without-pain': sentence<{ side: Side }>({
		clinician: ({ side }) =>
			`Bone tenderness on the ${side} side without pain recorded in that zone: the rule says no ` +
			'film, your judgement decides.',
	}),
}
