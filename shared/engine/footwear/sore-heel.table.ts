/** Heels that a heel lock would pull against the counter: common practice, no source. */
import type { Condition } from '../visit/terms.ts'

export const soreHeels: readonly Condition[] = ['achilles-insertional', 'haglund-deformity', 'calcaneal-apophysitis']
