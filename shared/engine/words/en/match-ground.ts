/** What is said of the sole of a model on the ground played on. For the clinician alone. */
import type { PairRole, Sole, Surface } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { soleName } from './features.ts'
import { article, capital, term, terms } from './format.ts'

const roleUse: Record<PairRole, string> = {
	match: 'matches',
	training: 'training',
	running: 'running',
	everyday: 'everyday wear',
}
const suitsWords = {
	poor: 'poor',
	second: 'second choice',
	'near-best': 'nearly the best choice',
} as const
export const groundSentences = {
	'match.sole': sentence<{ sole: Sole; banned: readonly Surface[] }>({
		clinician: ({ sole, banned }) =>
			`${capital(article(soleName(sole)))} is unsuitable on every surface played on ` +
			`(${terms(banned)}).`,
	}),
	'match.sole-part': sentence<{ banned: readonly Surface[] }>({
		clinician: ({ banned }) => `Not to be worn on ${terms(banned)}: a second pair is needed there.`,
	}),
	'match.sole-role': sentence<{ sole: Sole; role: PairRole }>({
		clinician: ({ sole, role }) =>
			`${capital(article(soleName(sole)))} is not for ${roleUse[role]}.`,
	}),
	'match.sole-scrum': sentence<{ sole: Sole; surface: Surface }>({
		clinician: ({ sole, surface }) =>
			`${capital(article(soleName(sole)))} does not hold a push in the scrum on ${term(surface)}.`,
	}),
	'match.surface': sentence<{ sole: Sole; suits: keyof typeof suitsWords }>({
		clinician: ({ sole, suits }) =>
			`${capital(article(soleName(sole)))} is ${suitsWords[suits]} for the surfaces it may be ` +
			'worn on.',
	}),
	'match.surface-fit': sentence<{ sole: Sole; suited: readonly Surface[] }>({
		clinician: ({ sole, suited }) => `Its ${soleName(sole)} suits ${terms(suited)}.`,
	}),
}
