import { expect } from 'vitest'
import { writePath } from '../../renderer/parts/draft-path.ts'
import type { DraftContent } from '../../shared/contract.ts'

export const day = '2027-01-20'
export const roster = (players: number) =>
	[
		'Number;Given name;Family name;Birth date;Sex;Guardian;Guardian e-mail;Consents',
		...Array.from({ length: players }, (_, at) => {
			const family = `Family${String.fromCharCode(65 + (at % 26))}${at}x`
			const born = `20${String(10 + (at % 5)).padStart(2, '0')}-0${1 + (at % 9)}-1${at % 9}`
			const guardian = `Rae ${at};rae${at}@example.org`
			const consents = at % 3 === 0 ? '' : 'squad-summary'
			const sex = at % 2 ? 'f' : 'm'
			return `${at + 1};Given${at};${family};${born};${sex};${guardian};${consents}`
		}),
	].join('\r\n')
export const values = (at: number): [string, unknown][] => [
	['play.code', 'association'],
	['body.statureCm', 150 + (at % 20)],
	['body.massKg', 42 + (at % 20)],
	...['left', 'right'].flatMap((side): [string, unknown][] => [
		[`feet.${side}.heelToToeMm`, 240 + (at % 15)],
		[`feet.${side}.ballWidthMm`, 92],
		[`ankles.${side}.lungeCm`, 9],
		[`posture.${side}.fpi6`, [1, 1, 1, 1, 1, 1]],
	]),
	[
		'footwear',
		[{ id: 'p1', name: 'match boots', sole: 'firm-ground', sizeSystem: 'eu', size: 38 }],
	],
]
// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
export type Ask = (name: string, input?: unknown) => Promise<any>
export async function enter(
	ask: Ask,
	playerId: string,
	entries: [string, unknown][],
	consentNoted?: true,
) {
	const { draft } = (await ask('drafts.open', { playerId, visitDate: day })) as {
		draft: { draftId: string; content: DraftContent }
	}
	const visit = entries.reduce(
		(now, [path, value]) => writePath(now, path, value),
		draft.content.visit,
	)
	await ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			visit,
			decisions: { ...draft.content.decisions, ...(consentNoted ? { consentNoted } : {}) },
		},
	})
	return draft.draftId
}
export const until = async (done: () => Promise<boolean>) => {
	await expect.poll(done, { interval: 5 }).toBe(true)
}
