/** Findings of the season, all of one topic and of no side unless a rule says otherwise. */
import type { Finding } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'

/** A finding of the season that concerns neither foot more than the other. */
export const seasonFinding = (
	id: string,
	level: Finding['level'],
	says: string,
	because: Because[],
	basis: Finding['basis'],
): Finding => ({ id, topic: 'season', side: 'none', level, says, because, basis })
/** The basis of a rule that holds by how this program works. */
export const ownRule = (rule: string): Finding['basis'] => ({
	rule,
	source: 'own rule of this program',
	strength: 'practice',
})
