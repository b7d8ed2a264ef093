/** A player with heel pain and an insert, with the visits before the one that is walked. */
import type { Page } from '@playwright/test'
import type { Since, Visit } from '../../shared/engine/visit/visit.ts'
import { decideOn, hostCall } from './drive.ts'

const asked = { nightPain: false, fever: false, reducedSensation: false }
const conditions = (told: object) => [
	{ condition: 'plantar-heel-pain', side: 'left', status: 'current', ...told },
]
const first = {
	complaint: 'Heel pain, left',
	body: { statureCm: 180, massKg: 78 },
	feet: {
		stance: 'standing',
		left: { heelToToeMm: [262, 262], heelToBallMm: 190, ballWidthMm: 101, heelWidthMm: 66 },
		right: { heelToToeMm: [263, 263], heelToBallMm: 191, ballWidthMm: 101, heelWidthMm: 66 },
	},
	posture: { left: { fpi6: [1, 1, 1, 1, 1, 1] }, right: { fpi6: [1, 1, 1, 1, 1, 1] } },
	footwear: [
		{
			id: 'p1',
			name: 'match boots',
			sole: 'firm-ground',
			sizeSystem: 'eu',
			size: 42,
			insideLengthMm: 273,
			heelToForefootOffsetMm: 4,
		},
	],
}
async function signOn(
	page: Page,
	playerId: string,
	visitDate: string,
	parts: (visit: Visit) => object,
	recheck: boolean,
): Promise<void> {
	const { draft } = await hostCall(page, 'drafts.open', { playerId, visitDate, recheck })
	const visit = { ...draft.content.visit, screening: asked, ...parts(draft.content.visit) }
	await hostCall(page, 'drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, visit },
	})
	const draftId = await decideOn(page, playerId, visitDate)
	await hostCall(page, 'visits.sign', { draftId })
}
/** The first visit: pain, and an insert that is ordered as proposed. */
export async function signedWithInsert(
	page: Page,
	player: { givenName: string; familyName: string },
	visitDate: string,
): Promise<string> {
	const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', {
		player: { ...player, birthDate: '1996-05-03', sex: 'male' },
	})
	await signOn(
		page,
		playerId,
		visitDate,
		() => ({ ...first, conditions: conditions({ painWorst: 7 }) }),
		false,
	)
	return playerId
}
/** What is told of everything worn: still worn, with or without trouble by place. */
function worn(since: Since | undefined, places: readonly string[]) {
	return (since?.worn ?? []).map((one) => ({
		...one,
		now: 'still-worn',
		trouble: one.what === 'insert' && places.length > 0 ? ['too-tight'] : ['none'],
	}))
}
/** A re-check that is signed, all as proposed. */
export const signedRecheck = (
	page: Page,
	playerId: string,
	visitDate: string,
	told: object,
	places: readonly string[] = [],
): Promise<void> =>
	signOn(
		page,
		playerId,
		visitDate,
		(visit) => ({
			body: first.body,
			feet: first.feet,
			posture: first.posture,
			conditions: conditions(told),
			since: { ...visit.since, worn: worn(visit.since, places) },
			...(visit.insertWorn && {
				insertWorn: {
					...visit.insertWorn,
					left: { ...visit.insertWorn.left, ...(places.length > 0 && { places }) },
				},
			}),
		}),
		true,
	)
