/** What is due is answered, a reminder is made, and a referral is asked after; before 0.6 there was none. */
import type { Ask, Opened, World } from './program.ts'
import { measured, signed } from './visits.ts'

/** Somebody who was sent on two days ago, and of whom nothing was heard. */
async function sentOn({ program }: World, ask: Ask): Promise<void> {
	const { playerId } = await ask('players.save', {
		player: { givenName: 'Mab', familyName: 'Orrery', birthDate: '1999-07-04', sex: 'female' },
	})
	const visit = { ...measured(251), screening: { breathlessOrChestPain: true } }
	await signed(program, ask, playerId, '2027-01-18', visit)
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
}
