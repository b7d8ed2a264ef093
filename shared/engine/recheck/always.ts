/** What a re-check asks whatever the last visit said, in words for the clinician. */
import type { Gate } from '../findings/gate.ts'
import { count } from '../words/en/format.ts'

/** @param gate as it stands now; undefined while it cannot be worked out */
export function askedOfAll(gate: Gate | undefined): string {
	const held = gate
		? (['person', 'left', 'right'] as const).flatMap((part) => gate[part].holds)
		: []
	const holds = new Set(held.map(({ rule }) => rule)).size
	const open = holds === 0 ? '' : `, and ${count(holds, 'sign')} that still holds something back`
	return `The warning questions are asked on Flags as at every visit${open}.`
}
