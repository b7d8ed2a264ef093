/** What is due is answered, a reminder is made, and a referral is asked after; before 0.6 there was none. */
import type { Opened } from './program.ts'

export async function answerDue({ ask, call }: Opened): Promise<void> {
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
