/** What the elements of an insert are called, and one of them in a few words. */
import { number } from './format.ts'

/** Every element of the catalogue, in the order in which an order lists them. */
export const elementNames = {
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
export type ElementId = keyof typeof elementNames
const isKnown = (element: string): element is ElementId => Object.hasOwn(elementNames, element)
/** What an element is called; one this version does not know, by its id. */
export const elementName = (element: string): string =>
	isKnown(element) ? elementNames[element] : element
/** What an element of an insert is, and how much of it. */
export interface SizedElement {
	element: string
	choice?: string
	value?: number
	unit?: string
}
/** One element in a few words: 'medial rearfoot post 4 deg'. */
export function elementText({ element, choice, value, unit }: SizedElement): string {
	const words = [elementName(element)]
	if (choice !== undefined) words.push(choice)
	if (value !== undefined) words.push(`${number(value)} ${unit ?? ''}`.trim())
	return words.join(' ')
}
