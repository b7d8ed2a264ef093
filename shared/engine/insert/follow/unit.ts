/** In which unit an element is adjusted: a post by its angle, all else by its height. */
import { elementRows } from '../elements/elements.ts'

export const adjustUnit = (element: string | undefined): 'mm' | 'deg' =>
	elementRows.find((row) => row.element === element)?.unit === 'deg' ? 'deg' : 'mm'
