import { row } from '../row.ts'

/** What is asked of every player, whatever the room. */
export const playerRows = {
	'player.adultFromYears': row(18, 'years', 'all players', 'common practice, no source; the clot score is for 18 and over (NICE QS201)', 'practice', 'common practice'),
	'player.painRealChange': row(
		2,
		'points of 10, pain scale',
		'adults with low-back pain; none found for the foot, and none for players under 18',
		'Childs 2005, Spine 30:1331, abstract (standard error 1.02, smallest detectable change 2); other places differ, neck pain 4.0 (BMC Musculoskelet Disord 2008, 9:43, abstract)',
		'cohort',
		'read',
	),
} as const
