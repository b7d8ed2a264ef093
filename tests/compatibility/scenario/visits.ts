/** Visits of the fixtures: drafts that are filled, decided and signed through the calls of the host. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { agreed } from '../../agreed.ts'
import type { Ask, Program } from './program.ts'

const feet = (mm: number) => ({
	stance: 'standing',
	left: { heelToToeMm: [mm], ballWidthMm: 92 },
	right: { heelToToeMm: [mm + 2], ballWidthMm: 93 },
})
/** What is measured: enough for findings, short enough to stay small. */
export const measured = (mm: number) => ({
	play: { code: 'association', position: 'full-back', surfaces: ['natural-firm'] },
	feet: feet(mm),
	ankles: { left: { lungeCm: 9 }, right: { lungeCm: 11 } },
	notes: `measured at ${mm} mm`,
	footwear: [
		{ id: 'firm', name: 'firm boots', sole: 'firm-ground', sizeSystem: 'eu', size: 42 },
		{ id: 'turf', name: 'turf shoes', sole: 'turf', sizeSystem: 'eu', size: 42 },
	],
})
/** Notes, so that each finding can be decided; the words that stand are the program's own. */
const accepted = (findings: { id: string; says: string }[]) =>
	findings.map(({ id, says }) => ({ findingId: id, choice: 'accept', about: says }))

/** What a program asks since it asks questions. */
interface Questions {
	questions: { id: string; of: string; because: string[]; held: boolean }[]
}
/** Each question as proposed; the first, of safety, is set aside: nobody was asked anything. */
const settled = ({ questions }: Questions) =>
	questions
		.filter(({ held }) => !held)
		.map(({ id, of, because }) => ({
			question: id,
			of,
			read: because,
			...(id === 'gate'
				? { choice: 'set-aside', why: 'not asked that day' }
				: { choice: 'as-proposed' }),
		}))

/** What is noted before signing: what was agreed to, or that there is consent before it was asked. */
const noted = (root: string) =>
	existsSync(join(root, 'shared/engine/visit/agreement.ts')) ? agreed : { consentNoted: true }

/** @returns the id of the player's draft of this day, filled and left open */
export async function drafted(
	ask: Ask,
	playerId: string,
	visitDate: string,
	visit: object,
	raw: object = {},
): Promise<string> {
	const { draft } = await ask('drafts.open', { playerId, visitDate })
	const { content } = draft
	await ask('drafts.save', {
		draftId: draft.draftId,
		content: { ...content, raw, step: 'feet', visit: { ...content.visit, ...visit } },
	})
	return draft.draftId
}
/** Decides what is open in the player's draft and signs it. @returns the visit's id */
export async function signDraft(
	{ assess, root }: Program,
	ask: Ask,
	playerId: string,
	visitDate: string,
	change: object = {},
): Promise<string> {
	const { draft, earlier } = await ask('drafts.open', { playerId, visitDate })
	const visit = { ...draft.content.visit, ...change }
	const protocol = (await ask('protocol.get')).file
	const { findings, prescription } = assess(
		visit,
		earlier,
		protocol,
		(await ask('shelf.get')).shelf,
	)
	const decisions = {
		...draft.content.decisions,
		...noted(root),
		lines: accepted(findings),
		...(prescription && { answers: settled(prescription) }),
		actions: [{ what: 'Wear the firm boots for matches', when: 'this week', who: 'player' }],
		referralDone: 'Seen by the team doctor the same day.',
	}
	await ask('drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, raw: {}, visit, decisions },
	})
	return (await ask('visits.sign', { draftId: draft.draftId })).visitId
}
/** A visit from nothing to signed. */
export async function signed(
	program: Program,
	ask: Ask,
	playerId: string,
	visitDate: string,
	visit: object,
): Promise<string> {
	await drafted(ask, playerId, visitDate, visit)
	return signDraft(program, ask, playerId, visitDate)
}
