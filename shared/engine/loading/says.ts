/** How the loading room says a finding; it is of the whole player, so it has no side. */
import type { Finding } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'

export function finding(
	rule: string,
	level: Finding['level'],
	says: string,
	because: Because[],
	basis: Basis,
): Finding {
	return { id: `loading.${rule}`, topic: 'loading', side: 'none', level, says, because, basis }
}
