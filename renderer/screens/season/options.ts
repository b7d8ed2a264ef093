/** What the season's short forms offer to be chosen: value and words. Pure. */
import { codes, surfaces, termWords } from '../../../shared/engine/visit/terms.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'

/** What every form of the season is given. */
export interface Edit {
	season: Season
	/** @param says what was done, in words */
	change: (next: Season, says: string) => void
}
export type Option = [value: string, words: string]

export const codeOptions = codes.map((code): Option => [code, termWords(code)])
export const surfaceOptions = surfaces.map((surface): Option => [surface, termWords(surface)])
export const groundOptions: Option[] = [
	['dry', 'dry'],
	['damp', 'damp'],
	['wet', 'wet'],
]
/** Training first: it is the more frequent in a week. */
export const weeklyKinds: Option[] = [
	['training', 'training'],
	['match', 'match'],
]
export const singleKinds: Option[] = weeklyKinds.toReversed()
