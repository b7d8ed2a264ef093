/** What a footwear rule is made of, and what makes it apply. */

import {
	conditionReasons,
	type RecordedCondition,
	recordedConditions,
} from '../../conditions/query.ts'
import type { Because } from '../../protocol/basis.ts'
import { type Basis, commonPractice } from '../../protocol/basis.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { SettlingRank } from '../../protocol/settling.table.ts'
import type { PositionRole } from '../../visit/positions.ts'
import type { Code, Condition, Feature, PairRole, Surface } from '../../visit/terms.ts'
import { type Statement, type StatementCode, state } from '../../words/statement.ts'
import type { Facts } from '../facts.ts'
import { once } from '../once.ts'

/** When, what it says, what to seek and avoid, and on what basis. */
export interface FootwearRule {
	id: string
	/** Visit paths it reads: with none of them recorded it cannot apply. */
	needs: readonly string[]
	/** Any of these recorded, whatever the side: a pair is for both feet. */
	conditions?: readonly Condition[]
	/** now: current or recovering (the usual); ever: past ones too, for history that stays relevant. */
	when?: 'now' | 'ever'
	/** Any of these played on. */
	surfaces?: readonly Surface[]
	/** This code played. */
	code?: Code
	/** A position with this role. */
	role?: PositionRole
	/** What was measured that calls for it; none: nothing was. */
	found?(facts: Facts): Because[]
	/** Only where a condition is recorded and something was found, not either. */
	together?: true
	/** Where its sentence tells more than its code: numbers of the protocol, positions. */
	says?(facts: Facts, protocol: Protocol): Statement
	seek: readonly Feature[]
	avoid: readonly Feature[]
	/**
	 * Where its wishes stand when wishes pull apart. That of an injury now is of one that comes back
	 * where nothing but past ones is recorded.
	 */
	rank: SettlingRank
	/** Of its features those without which a model is not put forward, while the injury is not past. */
	strict?: readonly Feature[]
	/** Of its features those that its source says nothing of: they rest on common practice. */
	practiceOnly?: readonly Feature[]
	/** Only for pairs of these roles. */
	roles?: readonly PairRole[]
	/** Only for players who still grow. */
	of?: 'minors'
	/** Told where nothing may be bought too: what protects a foot until it is reviewed. */
	protects?: true
	basis: Pick<Basis, 'source' | 'strength' | 'unsourced'> & {
		threshold?: 'footwear.broadZ' | 'footwear.narrowZ' | 'footwear.heavyKg'
	}
}
/** The basis of a rule that no source was found for. */
export const practice = commonPractice
/** The same where even the trade only believes it. */
export const belief = {
	source: 'common practice, no source: belief, not trial evidence',
	strength: 'practice',
	unsourced: true,
} as const

/** The positions played that have a role, by the names of the list. */
export const positionsWith = (role: PositionRole, { positions }: Facts): string[] =>
	positions.filter(({ roles }) => roles.includes(role)).map(({ name }) => name)
function playReasons({ surfaces = [], code, role }: FootwearRule, facts: Facts): Because[] {
	const inPosition = role === undefined ? [] : positionsWith(role, facts)
	return [
		...facts.surfaces
			.filter((surface) => surfaces.includes(surface))
			.map((value) => ({ measure: 'surfaces', value })),
		...(code !== undefined && facts.code === code ? [{ measure: 'code', value: code }] : []),
		...inPosition.map((value) => ({ measure: 'position', value })),
	]
}
/** The reasons that make a rule apply; none: it does not. */
export function reasonsOf(rule: FootwearRule, facts: Facts): Because[] {
	if (rule.of === 'minors' && facts.adult) return []
	const found = rule.found?.(facts) ?? []
	const recorded = conditionReasons(facts.visit, rule.conditions ?? [], {
		when: rule.when ?? 'now',
	})
	if (rule.together && (found.length === 0 || recorded.length === 0)) return []
	return once([...found, ...recorded, ...playReasons(rule, facts)])
}
/** What a rule says where it applies: the sentence of its id, unless it says more. */
export const sentenceOf = (rule: FootwearRule, facts: Facts, protocol: Protocol): Statement =>
	rule.says?.(facts, protocol) ?? state(codeOf(rule))
/** A rule without a sentence of its own fails the test of the rules. */
type PlainCode = Extract<StatementCode, 'footwear.cavus'>
const codeOf = ({ id }: FootwearRule): PlainCode => `footwear.${id}` as PlainCode

/** Current or recovering ones of its conditions, and those found: what makes an injury one of now. */
const injuredNow = (rule: FootwearRule, facts: Facts) =>
	recordedConditions(facts.visit, rule.conditions ?? [], { when: 'now' })
/** Where the wishes of a rule stand for this player. */
export const rankFor = (rule: FootwearRule, facts: Facts): SettlingRank =>
	rule.rank === 'injury-now' &&
	injuredNow(rule, facts).length === 0 &&
	(rule.found?.(facts) ?? []).length === 0
		? 'recurrent-injury'
		: rule.rank
/** The worst pain of these, 0 to 10; one that was not asked counts as middling. None: undefined. */
export function worstPain(
	recorded: readonly RecordedCondition[],
	protocol: Protocol,
): number | undefined {
	const pains = recorded.map(
		({ painWorst }) => painWorst ?? protocol.value('footwear.painNotAsked'),
	)
	return pains.length === 0 ? undefined : Math.max(...pains)
}
/** The worst pain of the injuries behind a rule. */
export const severityOf = (
	rule: FootwearRule,
	facts: Facts,
	protocol: Protocol,
): number | undefined => worstPain(injuredNow(rule, facts), protocol)
/** The grounds that a rule speaks of; undefined where it does not hang on the ground. */
export const groundsOf = (
	{ surfaces }: FootwearRule,
	facts: Facts,
): readonly Surface[] | undefined =>
	surfaces && facts.surfaces.filter((surface) => surfaces.includes(surface))
