/** Signed visits that a laptop made up: none takes effect, and each is named. */
import { beforeAll, test } from 'vitest'
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import { player } from './bench-app.ts'
import { type Forger, resealed, rewritten } from './bench-forger.ts'
import { detailsOf, type Homecoming, homecoming, of } from './bench-homecoming.ts'

let home: Homecoming

beforeAll(async () => {
	home = await homecoming()
})
test('a signed visit that was altered, or that nobody here may have signed, is not one', async () => {
	await home.without(
		(forger) => [
			rewritten(forger, home.theVisit(forger), {
				...(home.theVisit(forger).value as object),
				signedOn: '2027-01-19',
			}),
		],
		/not as it was signed: its digest is another one/,
	)
	for (const [signer, says] of [
		[{ personId: 'nobody-here', role: 'clinician' }, /not among the people here/],
		[{ personId: 'owner', role: 'student' }, /works here as owner/],
		[undefined, /does not say who/],
	] as const)
		await home.without((forger) => {
			const card = {
				...(home.theVisit(forger).card as object),
				student: signer?.role === 'student',
			}
			return [home.visitWith(forger, { signer }, { card })]
		}, says)
	const { people } = await home.app.ask('people.list')
	const desk = people.find(({ role }: { role: string }) => role === 'reception')
	await home.without(
		(forger) => [
			home.visitWith(forger, {
				signer: { personId: desk.personId, role: 'reception' },
				signedBy: { name: desk.name, registration: '' },
			}),
		],
		/reception\), who may not sign it/,
	)
	await home.without(
		(forger) => [
			home.visitWith(forger, { signedBy: { name: 'Somebody Famous', registration: 'X1' } }),
		],
		/bears the name Somebody Famous/,
	)
})
test('a visit of another day, or in the place of a signed one, is refused', async () => {
	const at = (day: string) => {
		const signedAt = `${day}T09:00:00.000Z`
		return (forger: Forger) => {
			const { card } = home.theVisit(forger)
			return [
				home.visitWith(
					forger,
					{ signedAt, signedOn: day },
					{ card: { ...(card as object), signedAt } },
				),
			]
		}
	}
	await home.without(at('2027-01-22'), /not yet come/)
	await home.without(at('2027-01-02'), /the pack was open from 2027-01-20 to 2027-02-10/)
	const inPlace = (forger: Forger): Carried[] => {
		const mine = of(forger, 'visit', (value: { visitId: string }) => value.visitId === home.own)
		const { signedAt } = home.theVisit(forger).value as { signedAt: string }
		const value = resealed({ ...(mine.value as object), signedAt, signedOn: '2027-01-20' })
		const card = { ...(mine.card as object), signedAt }
		return [rewritten(forger, mine, value, { card })]
	}
	await home.without(inPlace, /take the place of a visit that is signed already/)
})
test('what is put to another player, thing or card than it names is refused', async () => {
	await home.without(
		(forger) => [home.visitWith(forger, {}, { about: home.other })],
		/another player than it names/,
	)
	await home.without(
		(forger) => [home.visitWith(forger, {}, { thing: home.own })],
		/another thing than it names/,
	)
	await home.without(
		(forger) => [
			home.visitWith(
				forger,
				{},
				{ card: { ...(home.theVisit(forger).card as object), visitDate: '2020-01-01' } },
			),
		],
		/something else in its short form/,
	)
	await home.without(
		(forger) => [home.visitWith(forger, {}, { about: undefined })],
		/names no player/,
	)
	await home.without(
		(forger) => [
			forger.written(
				'player',
				{ playerId: home.other, player },
				{
					about: home.other,
					follows: detailsOf(forger, home.playerId).id,
				},
			),
		],
		/follows a record of another kind or of another player/,
	)
	await home.without(
		(forger) => [
			rewritten(forger, of(forger, 'report'), {
				...(of(forger, 'report').value as object),
				base64: 'AAAA',
			}),
		],
		/not the one that was signed/,
	)
})
