/** The elements of an insert, their words, and the basis of what no source was found for. */
import type { InsertElement } from '../findings/assessment.ts'
import type { Basis } from '../protocol/basis.ts'
import { rounded } from '../visit/sides.ts'

/** What each element is called. */
export const elementWords = {
	device: 'device',
	shell: 'shell',
	'heel-cup': 'heel cup',
	'rearfoot-post-medial': 'medial rearfoot post',
	'rearfoot-post-lateral': 'lateral rearfoot post',
	'medial-skive': 'medial heel skive',
	'lateral-skive': 'lateral heel skive',
	'forefoot-post-medial': 'medial forefoot post',
	'forefoot-post-lateral': 'lateral forefoot post',
	'first-ray-cutout': 'first-ray cut-out',
	'forefoot-stiffener': 'forefoot stiffener',
	'metatarsal-dome': 'metatarsal dome',
	'forefoot-cushion': 'forefoot cushion',
	'first-head-aperture': 'aperture under the first head',
	'heel-aperture': 'heel aperture',
	'heel-cushion': 'heel cushion',
	'heel-raise': 'heel raise',
	'leg-length-raise': 'leg-length raise',
	cover: 'cover',
	length: 'length',
} as const
export type ElementId = keyof typeof elementWords
/** Whether a proposal or a decision names an element that this version knows. */
const isKnown = (element: string): element is ElementId => Object.hasOwn(elementWords, element)
/** What an element is called; one this version does not know, by its id. */
export const wordsFor = (element: string): string =>
	isKnown(element) ? elementWords[element] : element
/** One element in a few words: 'medial rearfoot post 4 deg'. */
export function elementText({ element, choice, value, unit }: InsertElement): string {
	const words = [wordsFor(element)]
	if (choice !== undefined) words.push(choice)
	if (value !== undefined) words.push(`${rounded(value, 1)} ${unit ?? ''}`.trim())
	return words.join(' ')
}
/** The basis of a rule of the trade. */
export const practiceBasis = (rule: string): Basis => ({
	rule,
	source: 'common practice, no source',
	strength: 'practice',
})
