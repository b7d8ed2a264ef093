/** What goes between `npm run dev` and its host. */
import type { Answer } from '../../../shared/contract.ts'

export interface HostCall {
	id: number
	name: string
	input: unknown
}
export type HostAnswer = { ready: true } | { id: number; result: Answer<unknown> }
