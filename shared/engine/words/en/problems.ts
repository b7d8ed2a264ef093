/** What is wrong with an entry of a file, and what may stand there instead, by code. */
/** What stands at a place that was refused; a list and an object tell how much they hold. */
export type Given = string | number | boolean | null | { list: number } | { object: number }
/** The words of one code: what is wrong, what is allowed, and what was given where it is counted. */
export interface ProblemWords<Filling extends object> {
	wrong: (filling: Filling) => string
	allowed: (filling: Filling) => string
	given?: (filling: Filling) => string
}
const words = <Filling extends object = object>(
	wrong: string | ((filling: Filling) => string),
	allowed: (filling: Filling) => string,
	given?: (filling: Filling) => string,
): ProblemWords<Filling> => ({
	wrong: typeof wrong === 'string' ? () => wrong : wrong,
	allowed,
	...(given && { given }),
})
const kindWords: Readonly<Record<string, string>> = {
	number: 'a number',
	int: 'a whole number',
	string: 'text',
	boolean: 'true or false',
	array: 'a list',
	object: 'an object',
	record: 'an object',
	null: 'null',
}
interface Expected {
	/** A kind of value, as the schema names it. */
	expected?: string
	/** Or the terms of a list. */
	terms?: readonly string[]
}
const expectedWords = ({ expected = '', terms }: Expected): string =>
	terms ? terms.join(', ') : (kindWords[expected] ?? expected)
type Counted = 'characters' | 'entries'

export const problemWords = {
	'unknown-key': words('unknown key', () => 'only the keys of the file format'),
	missing: words<Expected>('missing', expectedWords),
	'wrong-type': words<Expected>('wrong type', expectedWords),
	'not-a-term': words<Expected>('not one of the terms', expectedWords),
	'too-short': words<{ least: number; of: Counted }>(
		'too short',
		({ least, of }) => `at least ${least} ${of}`,
	),
	'too-long': words<{ held: number; most: number; of: Counted }>(
		'too long',
		({ most, of }) => `at most ${most} ${of}`,
		({ held, of }) => `given ${held} ${of}`,
	),
	'too-small': words<{ least: number }>('too small', ({ least }) => `${least} or more`),
	'too-large': words<{ most: number }>('too large', ({ most }) => `${most} or less`),
	'not-a-date': words('wrong form', () => 'a date that exists, YYYY-MM-DD'),
	'not-a-moment': words('wrong form', () => 'a date and time such as 2027-01-20T09:30:00Z'),
	'not-an-email': words('wrong form', () => 'an e-mail address such as name@example.org'),
	'wrong-form': words<{ form: string }>('wrong form', ({ form }) => form),
	'not-allowed-here': words('not allowed here', () => 'see the file format'),
	'not-this-file': words<{ word: string; format: string }>(
		({ word }) => `not a ${word}`,
		({ format }) => `an object with format "${format}"`,
	),
	'newer-version': words(
		'a version of the future',
		() => '1 (open this file with a newer Lastwright)',
	),
	'not-below-stature': words<{ statureCm: number }>(
		'not below stature',
		({ statureCm }) =>
			`less than the stature of ${statureCm} cm (take off the height of the stool)`,
	),
	'not-before-visit': words<{ visitDate: string }>(
		'not before the visit',
		({ visitDate }) => `a date before ${visitDate}`,
	),
	'after-visit': words<{ visitDate: string }>(
		'after the visit',
		({ visitDate }) => `${visitDate} or earlier`,
	),
	'still-to-come': words<{ on: string }>('still to come', ({ on }) => `${on} or earlier`),
	'too-long-ago': words<{ mostYears: number; on: string }>(
		({ mostYears, on }) => `more than ${mostYears} years before ${on}`,
		({ mostYears, on }) => `a birth date within ${mostYears} years of ${on}`,
	),
	'not-in-a-name': words<{ sign: string }>(
		({ sign }) => `holds ${sign}, which is no part of a name`,
		() => 'letters, marks and blanks of any script',
	),
	'not-printed': words<{ letters: string; isSpelt: boolean }>(
		({ letters }) => `no font of the pages has its letters (${letters})`,
		({ isSpelt }) =>
			isSpelt
				? 'the name as it is, with its spelling in Latin letters beside it (latinName; in a list the columns ' +
					'Latin given name, Latin family name, Latin guardian)'
				: 'letters that the pages can print, such as Latin ones',
	),
	'not-below-length': words<{ reading: number; heelToToeMm: number }>(
		({ reading }) => `not below heel to toe (reading ${reading})`,
		({ heelToToeMm }) => `less than ${heelToToeMm} mm`,
	),
	'before-start': words<{ from: string }>('before the start', ({ from }) => `${from} or later`),
	'outside-season': words<{ from: string; to: string }>(
		'outside the season',
		({ from, to }) => `${from} to ${to}`,
	),
	'used-twice': words<{ of: 'pair' | 'model' }>(
		'used twice',
		({ of }) => `an id of its own for each ${of}`,
	),
	'listed-twice': words('listed twice', () => 'each size and fitting once'),
	'no-such-threshold': words('no such threshold', () => 'a key of the protocol table'),
	'not-a-number': words<{ unit: string }>('not a number', ({ unit }) => `a number in ${unit}`),
	'below-zero': words<{ unit: string }>('below zero', ({ unit }) => `0 or more (${unit})`),
	'above-zero': words<{ unit: string }>('above zero', ({ unit }) => `0 or less (${unit})`),
	'beyond-limits': words<{ least: number; most: number; unit: string }>(
		'beyond what it can be',
		({ least, most, unit }) => `${least} to ${most} (${unit})`,
	),
	'below-other': words<{ other: string; limit: number }>(
		({ other }) => `below ${other}`,
		({ limit }) => `${limit} or more`,
	),
	'above-other': words<{ other: string; limit: number }>(
		({ other }) => `above ${other}`,
		({ limit }) => `${limit} or less`,
	),
} as const
/** What was given; a text is quoted, and cut where it is long. */
export function givenWords(given: Given | undefined): string {
	if (given === undefined) return 'given nothing'
	if (given !== null && typeof given === 'object')
		return 'list' in given ? `given a list of ${given.list}` : 'given an object'
	if (typeof given === 'number') return `given ${given}`
	const text = JSON.stringify(given)
	return `given ${text.length > 60 ? `${text.slice(0, 57)}...` : text}`
}
/** More problems than are listed. */
export const moreWords = (more: number): string => `${more} more of the same kind are not listed`
