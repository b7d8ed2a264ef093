/** Decision lines by which the clinician marks what to try or do: the id is the mark's name, a point, and what it is about. */
import type { Decision, Decisions } from '../decisions.ts'

export type Mark = 'model' | 'work'
/** In the order they were marked; lines without words are left out. */
export const markedLines = ({ lines }: Decisions, mark: Mark): Decision[] => lines.filter((one) => one.choice === 'accept' && one.findingId.startsWith(`${mark}.`) && one.says !== undefined)
