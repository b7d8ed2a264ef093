/** What is due is answered, a reminder is made, and a referral is asked after; before 0.6 there was none. */
import type { Ask, Opened, World } from './program.ts'
import { measured, signDraft, signed } from './visits.ts'

/** Somebody who was sent on two days ago, and of whom nothing was heard. */
async function sentOn({ program }: World, ask: Ask): Promise<void> {
	const { playerId } = await ask('players.save', {
		player: { givenName: 'Mab', familyName: 'Orrery', birthDate: '1999-07-04', sex: 'female' },
	})
	const visit = { ...measured(251), screening: { breathlessOrChestPain: true } }
	await signed(program, ask, playerId, '2027-01-18', visit)
}
/** Somebody comes back for a re-check; a program that knows none refuses what it does not know. */
async function rechecked({ program }: World, { ask, call }: Pick<Opened, 'ask' | 'call'>) {
	const { playerId } = await ask('players.save', {
		player: { givenName: 'Wyn', familyName: 'Harkaway', birthDate: '1998-02-03', sex: 'male' },
	})
	const sore = { condition: 'achilles-midportion', side: 'left', status: 'current', painWorst: 6 }
	await signed(program, ask, playerId, '2027-01-11', { ...measured(258), conditions: [sore] })
	const on = '2027-01-20'
	const opened = await call('drafts.open', { playerId, visitDate: on, recheck: true })
	if (!opened.ok) return
	const { since } = opened.value.draft.content.visit
	const now = { painWorst: 4, painNow: 1, daysOff: 2, sessionsMissed: 1, status: 'recovering' }
	await signDraft(program, ask, playerId, on, {
		conditions: [{ ...sore, ...now }],
		since: {
			...since,
			done: [{ what: 'own', words: 'Wear the firm boots', answer: 'in-part', why: 'forgot' }],
			bought: [{ role: 'match', answer: 'bought', pair: 'firm', trouble: ['none'] }],
			worn: [
				{ what: 'raise', side: 'both', weeks: 1, hoursPerDay: 3, now: 'still-worn' },
				{
					what: 'insert',
					side: 'left',
					now: 'stopped-early',
					why: 'it-hurt',
					trouble: ['blister'],
				},
			],
			wearingIn: 'in-part',
			unchanged: ['play'],
		},
	})
}
export async function answerDue(world: World, { ask, call }: Opened): Promise<void> {
	const before = await call('recall.list', { limit: 50 })
	if (!before.ok) return
	await sentOn(world, ask)
	const listed = await call('recall.list', { limit: 50 })
	if (!listed.ok) return
	const { today, lines } = listed.value
	for (const { playerId, items } of lines.slice(0, 2)) {
		const [{ kind, from, pair, on }] = items
		const item = { kind, from, on, ...(pair === undefined ? {} : { pair }) }
		await ask('recall.answer', { playerId, items: [item], answer: { what: 'booked', on: today } })
		await ask('recall.answer', { playerId, items: [item], answer: { what: 'due' } })
	}
	const playerIds = lines.map(({ playerId }: { playerId: string }) => playerId)
	await ask('recall.remind', { playerIds, way: 'letter' })
	const { referrals } = await ask('recall.referrals')
	for (const { playerId, visitIds } of referrals)
		await ask('recall.followUp', {
			playerId,
			visitIds,
			entry: { what: 'try', says: 'rang, no answer' },
		})
	await rechecked(world, { ask, call })
}
