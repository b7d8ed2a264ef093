/** What is said of the pair of a role. */
import type { PairRole, Surface } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { amount, capital, term, terms } from './format.ts'
import { groundsInWords } from './settled.ts'

const forRole: Record<PairRole, string> = {
	match: 'matches',
	training: 'training',
	running: 'runs',
	everyday: 'every day',
}
export const rolesSentences = {
	/** The width to ask for: letters by scheme, and the wider foot. */
	'roles.width': sentence<{ us?: string; jis?: string; widthMm: number }>({
		clinician: ({ us, jis, widthMm }) =>
			[us && `US ${us}`, jis && `JIS ${jis}`, `foot ${amount(widthMm, 'mm')} wide at the ball`]
				.filter(Boolean)
				.join(', '),
	}),
	/** Why a pair that stays in use does not serve a role for which another is looked for. */
	'roles.beside': sentence<{
		pair: string
		role: PairRole
		why: 'hurts' | 'training-only' | 'sole'
		surfaces: readonly Surface[]
	}>({
		clinician: ({ pair, role, why, surfaces }) => {
			if (why === 'hurts')
				return `${capital(pair)}: it hurts, so it does not serve for ${forRole[role]}.`
			if (why === 'training-only') return `${capital(pair)}: for training only.`
			return surfaces.length === 0
				? `${capital(pair)}: its sole does not suit for ${term(role)}.`
				: `${capital(pair)}: its sole does not suit ${terms(surfaces)} or what is asked of it.`
		},
		player: ({ pair, role, why, surfaces }) => {
			if (why === 'hurts') return `You need others for ${forRole[role]}: your ${pair} hurt.`
			if (why === 'training-only') return `Your ${pair} are for training only.`
			return surfaces.length === 0
				? `The sole of your ${pair} is not right for ${forRole[role]}.`
				: `The sole of your ${pair} is not right for you on ${groundsInWords(surfaces)}.`
		},
	}),
}
