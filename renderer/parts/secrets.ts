/** A passphrase or PIN that is being chosen: typed twice, and not easy to guess. */
import { useEffect, useState } from 'react'
import { easyPin } from '../../shared/desk/people/pin.ts'
import type { Weakness } from '../../shared/desk/people/strength.ts'
import { leastPassphrase } from '../../shared/desk/workplace/passphrase.ts'

/** What was typed into the two fields. */
export interface Twice {
	once: string
	again: string
}
export const notTyped: Twice = { once: '', again: '' }
/** What is wrong with each field, in words; undefined where nothing is. */
export interface TwiceProblems {
	once?: string
	again?: string
}
const differs = (title: string): TwiceProblems => ({
	again: `${title} again differs. Type the same one twice.`,
})
/** @param title of the field, as the problem names it */
export function passphraseProblems(title: string, { once, again }: Twice): TwiceProblems {
	if (once.length < leastPassphrase)
		return {
			once: `${title} has ${once.length} characters. Choose one of ${leastPassphrase} or more.`,
		}
	return once === again ? {} : differs(title)
}
export function pinProblems(title: string, { once, again }: Twice): TwiceProblems {
	if (!/^\d{4,10}$/.test(once))
		return { once: `${title} has ${once.length} characters. Choose 4 to 10 digits.` }
	const easy = easyPin(once)
	if (easy) return { once: `${title} is easy to guess: ${easy}. Choose digits without a pattern.` }
	return once === again ? {} : differs(title)
}
/** @throws Error with the words, where something is wrong */
export function refuseProblems({ once, again }: TwiceProblems): void {
	const says = [once, again].filter((words) => words !== undefined)
	if (says.length > 0) throw new Error(says.join(' '))
}

/** How long nothing is typed before it is judged. */
const settledMs = 300
export type Judgement = 'too short' | 'strong' | Weakness

/**
 * Judges a passphrase while it is typed; the word lists are fetched with the first one. The host
 * judges again, and knows all names.
 * @param names of the clinic and of people, as far as the page knows them
 * @returns undefined where nothing was judged yet
 */
export function useJudgement(passphrase: string, names: readonly string[]): Judgement | undefined {
	const [judged, setJudged] = useState<{ of: string; is: Judgement }>()
	const named = names.join('\n')
	useEffect(() => {
		if (passphrase.length < leastPassphrase) return
		let isOld = false
		const judge = async () => {
			const { weaknessOf } = await import('../../shared/desk/people/strength.ts')
			if (!isOld)
				setJudged({ of: passphrase, is: weaknessOf(passphrase, named.split('\n')) ?? 'strong' })
		}
		const timer = setTimeout(() => void judge().catch(() => {}), settledMs)
		return () => {
			isOld = true
			clearTimeout(timer)
		}
	}, [passphrase, named])
	if (!passphrase) return undefined
	if (passphrase.length < leastPassphrase) return 'too short'
	return judged?.of === passphrase ? judged.is : undefined
}
