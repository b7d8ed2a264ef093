/** A player who was seen some months before, without complaint. */
import type { Page } from '@playwright/test'
import { decideOn, hostCall } from './drive.ts'

const cleo = { givenName: 'Cleo', familyName: 'Aldous', birthDate: '2001-02-11', sex: 'female' }
const earlier = {
	play: {
		code: 'association',
		position: 'full-back',
		standard: 'senior-amateur',
		kickingFoot: 'right',
		surfaces: ['natural-firm'],
		matchesPerWeek: 1,
		trainingsPerWeek: 2,
		organisedHoursPerWeek: 5,
	},
	body: { statureCm: 168, massKg: 61 },
	footwear: [
		{
			id: 'p1',
			name: 'match boots',
			sole: 'firm-ground',
			sizeSystem: 'eu',
			size: 39,
			insideLengthMm: 254,
			heelToForefootOffsetMm: 4,
			comfort: 8,
			hurts: false,
		},
	],
	feet: {
		stance: 'standing',
		left: { heelToToeMm: [244, 244], heelToBallMm: 178, ballWidthMm: 94, ballGirthMm: 232 },
		right: { heelToToeMm: [245, 245], heelToBallMm: 179, ballWidthMm: 94, ballGirthMm: 233 },
	},
	ankles: { left: { lungeDeg: [42, 42, 42] }, right: { lungeDeg: [43, 43, 43] } },
}
/** Another, who came with pain of the Achilles tendon. */
const rory = { givenName: 'Rory', familyName: 'Tansley', birthDate: '1996-05-03', sex: 'male' }
const withPain = {
	...earlier,
	complaint: 'Achilles pain, left',
	body: { statureCm: 180, massKg: 78 },
	conditions: [
		{
			condition: 'achilles-midportion',
			side: 'left',
			status: 'current',
			painWorst: 6,
		},
	],
	ankles: {
		left: { lungeDeg: [33, 33, 33], lungeCm: [7, 7, 7] },
		right: { lungeDeg: [40, 40, 40], lungeCm: [10, 10, 10] },
	},
}
/** A visit that was signed some months before. */
export const signedBefore = (page: Page): Promise<string> => signedAs(page, cleo, earlier)
/** The same of a player with pain, whose boots get a raise. */
export const signedWithPain = (page: Page): Promise<string> => signedAs(page, rory, withPain)
async function signedAs(page: Page, player: object, parts: object): Promise<string> {
	const visitDate = '2026-09-14'
	const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', { player })
	const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate })
	const visit = { ...draft.content.visit, ...parts }
	visit.screening = { nightPain: false, fever: false, reducedSensation: false }
	await hostCall(page, 'drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, visit },
	})
	const draftId = await decideOn(page, playerId, visitDate)
	await hostCall(page, 'visits.sign', { draftId })
	return playerId
}
