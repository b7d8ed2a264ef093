/** Mail settings, sealed like everything else, and what follows a sending in error. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { type Breach, countdown } from '../../../shared/desk/outbox/breach.ts'
import { numberOf } from '../../../shared/desk/outbox/item.ts'
import { type MailSettings, smtpProblems } from '../../../shared/desk/outbox/mail-settings.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'
import { nameOf } from './contacts.ts'
import { itemOf, putItem } from './items.ts'
import type { Post } from './post.ts'

const mostAccess = 200
function putBreach(state: State, { store, now }: Deps, breach: Breach): void {
	const known = state.breaches.get(breach.breachId)
	const recordId = store.append({
		kind: 'breach',
		at: now().toISOString(),
		...(known ? { follows: known.recordId } : {}),
		value: breach,
		about: breach.playerId,
		thing: breach.breachId,
	})
	state.breaches.set(breach.breachId, { breach, recordId })
}
export function mailCalls(state: State, deps: Deps, post: Post) {
	const { store, now } = deps
	return {
		'mail.get': (): OutputOf<'mail.get'> => {
			const { smtp, clock } = state.mail
			if (!smtp) return { clock }
			const { password, ...shown } = smtp
			return { clock, smtp: { ...shown, hasPassword: password !== undefined } }
		},
		/**
		 * Without a password the one before is kept, unless server or user changed: it never goes to
		 * another server.
		 */
		'mail.save': ({ smtp, clock }: InputOf<'mail.save'>) => {
			const before = state.mail.smtp
			const keeps =
				smtp?.user &&
				smtp.password === undefined &&
				before?.password !== undefined &&
				before.host === smtp.host &&
				before.user === smtp.user
			const whole = smtp && { ...smtp, ...(keeps ? { password: before.password } : {}) }
			const problems = whole ? smtpProblems(whole) : []
			if (problems.length > 0)
				throw new Refusal(
					'The mail settings cannot stand as they are. Nothing was changed.',
					problems,
				)
			const value: MailSettings = { clock, ...(whole ? { smtp: whole } : {}) }
			state.mailRecord = store.append({
				kind: 'mail',
				at: now().toISOString(),
				...(state.mailRecord ? { follows: state.mailRecord } : {}),
				value,
			})
			state.mail = value
			post.freshStart()
			return {}
		},
		'mail.test': async () => ({ says: await post.test() }),
		'outbox.sentInError': ({
			itemId,
			what,
			noticedAt,
		}: InputOf<'outbox.sentInError'>): OutputOf<'outbox.sentInError'> => {
			const item = itemOf(state, itemId)
			const at = now().toISOString()
			if (item.breachId) throw new Refusal('The steps for this one are open already.')
			if (item.sentAt === undefined && item.state !== 'uncertain' && item.taken === undefined)
				throw new Refusal('This did not leave yet. Call it back or close it instead.')
			if (noticedAt > at)
				throw new Refusal('The time it was noticed lies in the future.', [
					{ path: 'noticedAt', message: `given ${noticedAt}, allowed: ${at} or earlier` },
				])
			const breach: Breach = {
				breachId: randomUUID(),
				itemId,
				playerId: item.playerId,
				what,
				recipient: `${item.recipient.name}${item.recipient.email ? `, ${item.recipient.email}` : ''}`,
				noticedAt,
				recordedAt: at,
				by: state.acts().name,
				done: {},
			}
			store.together(() => {
				putBreach(state, deps, breach)
				putItem(state, deps, {
					...item,
					breachId: breach.breachId,
					history: [
						...item.history,
						{ at, by: state.acts().name, state: item.state, says: `Sent in error: ${what}` },
					],
				})
			})
			return { breachId: breach.breachId }
		},
		'breaches.list': (): OutputOf<'breaches.list'> => {
			const names = (ids: readonly string[]) => [
				...new Set(
					store
						.auditPage(
							Number.MAX_SAFE_INTEGER,
							mostAccess,
							(row) =>
								row.playerId !== null &&
								ids.includes(row.playerId) &&
								['read', 'send', 'print', 'export'].includes(row.function),
						)
						.map(
							(row) =>
								`${(row.personId && state.people.get(row.personId)?.name) || 'Lastwright'}: ` +
								`${row.function}`,
						),
				),
			]
			store.audit({ function: 'read', objectRef: 'breaches' })
			return {
				breaches: [...state.breaches.values()]
					.filter(({ breach }) => state.players.has(breach.playerId))
					.map(({ breach }) => ({
						...breach,
						playerName: nameOf(state, breach.playerId),
						number: numberOf(breach.itemId),
						...countdown(breach, state.mail.clock, now().toISOString()),
						access: names(state.idsOf(breach.playerId)),
					})),
			}
		},
		'breaches.step': ({ breachId, step, note }: InputOf<'breaches.step'>) => {
			const known = state.breaches.get(breachId)
			if (!known) throw new Refusal('These steps are not in the records.')
			putBreach(state, deps, {
				...known.breach,
				done: {
					...known.breach.done,
					[step]: { at: now().toISOString(), by: state.acts().name, note },
				},
			})
			return {}
		},
	}
}
