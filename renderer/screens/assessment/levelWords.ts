import type { Level } from '../../../shared/engine/findings/finding.ts'

/** The one word for each level, wherever a finding stands in the walk. */
export const levelWords: Readonly<Record<Level, string>> = {
	stop: 'Stop',
	caution: 'Caution',
	advise: 'Advise',
	note: 'Note',
}
