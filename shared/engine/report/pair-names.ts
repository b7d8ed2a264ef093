/** How a pair of the plan is called: by its own name, or by what it is for. */
import type { PairRole } from '../visit/terms.ts'
import { pairRoles, termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import type { Speak } from '../words/speak.ts'

const ofRole = 'role.'
const isRole = (name: string): name is PairRole => pairRoles.some((role) => role === name)
/** What a role is called. */
export const roleWords = (role: PairRole, t: Speak): string => t(`role.${role}`)
/** @param id of an owned pair, or `role.` and what a pair to be chosen is for */
export function pairName(id: string, { footwear = [] }: Pick<Visit, 'footwear'>, t: Speak): string {
	const own = footwear.find((pair) => pair.id === id)
	if (own) return own.name || (own.sole ? termWords(own.sole) : id)
	const role = id.startsWith(ofRole) ? id.slice(ofRole.length) : id
	// a second sole for one role is told from the first by a number
	const [name = '', number] = role.split('.')
	if (!isRole(name)) return id
	return [roleWords(name, t), number].filter(Boolean).join(' ')
}
