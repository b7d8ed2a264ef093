/** Fills the state from the store after unlock. A damaged record is named; the rest loads. */
import type { Clinic } from '../../shared/clinic.ts'
import type { SignedVisit } from '../../shared/contract.ts'
import type { Player } from '../../shared/visit/visit.ts'
import type { Deps, DraftValue, State } from './state.ts'

export interface PlayerValue { playerId: string; player: Player }
export interface ReportValue { visitId: string; base64: string; sha256: string; fileName: string }

export function loadState(state: State, { store }: Deps): void {
	state.clear()
	const { records, damaged } = store.load(['clinic', 'player', 'visit'])
	state.warnings.push(...damaged)
	for (const record of records) {
		if (record.kind === 'clinic') {
			state.clinic = record.value as Clinic
			state.clinicRecord = record.id
		} else if (record.kind === 'player') {
			const { playerId, player } = record.value as PlayerValue
			putPlayer(state, playerId, player, record.id)
		} else {
			const visit = record.value as SignedVisit
			putVisit(state, visit, record.id)
		}
	}
	// a report names the visit record it follows, so its bytes stay sealed until someone opens it
	const visitIds = new Map([...state.visitRecord].map(([visitId, recordId]) => [recordId, visitId]))
	for (const { id, follows } of store.follows('report')) {
		const visitId = follows === undefined ? undefined : visitIds.get(follows)
		if (visitId !== undefined) state.reportRecord.set(visitId, id)
	}
	for (const draftId of store.draftIds()) {
		try {
			const draft = store.draft(draftId)
			if (!draft) continue
			const { playerId, content } = draft.value as DraftValue
			state.drafts.set(draftId, { playerId, visitDate: content.visit.visitDate, savedAt: draft.at })
			const entry = state.players.get(playerId)
			if (entry) entry.card.openDraft = true
		} catch {
			state.warnings.push(`The draft ${draftId} is damaged and cannot be read. All other records are unaffected; restore it from a backup.`)
		}
	}
}
export function putPlayer(state: State, playerId: string, player: Player, recordId: string): void {
	const known = state.players.get(playerId)
	const card = { playerId, givenName: player.givenName, familyName: player.familyName, birthDate: player.birthDate, sex: player.sex, ...(player.club === undefined ? {} : { club: player.club }), ...(known?.card.lastVisit === undefined ? {} : { lastVisit: known.card.lastVisit }), openDraft: known?.card.openDraft ?? false }
	state.players.set(playerId, { card, player, recordId, visits: known?.visits ?? [] })
}
export function putVisit(state: State, visit: SignedVisit, recordId: string): void {
	state.visitRecord.set(visit.visitId, recordId)
	const entry = state.players.get(visit.playerId)
	if (!entry) return
	entry.visits.push({ visitId: visit.visitId, recordId, visitDate: visit.visit.visitDate, signedAt: visit.signedAt })
	if (entry.card.lastVisit === undefined || entry.card.lastVisit < visit.visit.visitDate) entry.card.lastVisit = visit.visit.visitDate
}
