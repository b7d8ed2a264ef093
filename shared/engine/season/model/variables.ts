/** What each variable of the programme is, and the name the solver knows it by. */
import type { Model } from './programme.ts'

export type Variable =
	/** in a session the pair is worn; so many minutes of it */
	| { is: 'worn' | 'part'; slot: number; pair: number }
	/** the pair may be worn before it is dry; it is worn in a match unfamiliar */
	| { is: 'not-dry' | 'unfamiliar'; slot: number; pair: number }
	/**
	 * a session without a pair, with a change of boots, not in the pinned pair or the one told
	 * before, before a switch
	 */
	| { is: 'without' | 'change' | 'pin-missed' | 'told-missed' | 'switch'; slot: number }
	/** training minutes of a pair outside the share asked for */
	| { is: 'share-over' | 'share-under'; pair: number }
	/** wear of the most worn pair; minutes of the pair with the most */
	| { is: 'most-worn' | 'most-minutes' }

const letters: Record<Variable['is'], string> = {
	worn: 'x',
	part: 'y',
	'not-dry': 'v',
	unfamiliar: 'f',
	without: 'u',
	change: 'e',
	'pin-missed': 'm',
	'told-missed': 't',
	switch: 'k',
	'share-over': 'o',
	'share-under': 'r',
	'most-worn': 'z',
	'most-minutes': 'q',
}
/** The name of a variable in the text of the programme; nothing ever reads it back. */
export function nameOf(variable: Variable): string {
	const slot = 'slot' in variable ? [variable.slot] : []
	const pair = 'pair' in variable ? [variable.pair] : []
	return `${letters[variable.is]}${[...slot, ...pair].join('_')}`
}
/** Takes a variable into the model. @returns its name */
export function declare({ variables }: Pick<Model, 'variables'>, variable: Variable): string {
	const name = nameOf(variable)
	variables.set(name, variable)
	return name
}
