/** Sources on which more than one group of questions rests. */
import type { Ground } from './sign-row.ts'

export const fromMemory: Ground = { source: 'common practice (from memory)', strength: 'practice' }
export const limpGuidelines: Ground = {
	source: 'NHS hospital limp guideline 2021; Queensland paediatric guideline',
	strength: 'guideline',
}
export const cancerGuideline: Ground = {
	source: 'NICE NG12 (secondary pages); CCLG guideline',
	strength: 'guideline',
}
