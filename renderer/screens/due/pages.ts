/** The pages of the room of what is due, for who works here. */
export type DuePage = 'players' | 'referrals' | 'audit'

/** @param leads whether who works here answers for the clinic: a clinician, the owner */
export const duePages = (here: DuePage, leads: boolean) => [
	{ to: '#/due', title: 'Players', here: here === 'players' },
	{ to: '#/due/referrals', title: 'Referrals not heard from', here: here === 'referrals' },
	...(leads ? [{ to: '#/audit', title: 'What became of it', here: here === 'audit' }] : []),
]
