/**
 * What of the agreement keeps a visit from being signed: what is missing is named, each with where it
 * is written. Behind a stop only who was told is asked for, so that nobody is kept waiting. Pure.
 */
import { type Agreement, mayNeverInterpret, parties } from '../visit/agreement.ts'
import { languagesTold, type Speaking } from '../visit/languages.ts'
import { type Statement, state } from '../words/statement.ts'

export const agreementPath = 'decisions.agreement'
export interface AgreementBlock extends Statement {
	path: string
}
/** Whose agreement it is. */
export interface AgreementOf {
	minor: boolean
	/** Sport is held: only who was told is needed. */
	urgent: boolean
	/** Whose preferred languages tell whether it is asked how it was explained. */
	player: Speaking
}
type Reason = (agreement: Agreement, of: AgreementOf) => AgreementBlock[]
const block = (path: string, statement: Statement): AgreementBlock[] => [
	{ path: `${agreementPath}.${path}`, ...statement },
]
const isBlank = (typed: string | undefined): boolean => (typed ?? '').trim() === ''

const toldWhom: Reason = ({ explainedTo = {}, guardianName }) => {
	if (!parties.some((party) => explainedTo[party]))
		return block('explainedTo', state('signing.told-nobody'))
	if (explainedTo.guardian && isBlank(guardianName))
		return block('guardianName', state('signing.guardian-unnamed'))
	return explainedTo.other && isBlank(explainedTo.otherName)
		? block('explainedTo', state('signing.told-unnamed'))
		: []
}
const toldWhat: Reason = ({ explained = {} }) =>
	Object.values(explained).some(Boolean) ? [] : block('explained', state('signing.told-nothing'))
const whichAnswer: Reason = ({ answer, notAgreed }) => {
	if (answer === undefined) return block('answer', state('signing.no-answer'))
	return answer !== 'agreed' && isBlank(notAgreed)
		? block('notAgreed', state('signing.declined-what'))
		: []
}
const byWhom: Reason = ({ by = {}, guardianName }) => {
	if (!parties.some((party) => by[party])) return block('by', state('signing.answer-by-nobody'))
	if (by.guardian && isBlank(guardianName))
		return block('guardianName', state('signing.guardian-unnamed'))
	return by.other && (isBlank(by.otherName) || isBlank(by.otherRight))
		? block('by', state('signing.answer-by-unnamed'))
		: []
}
/** Whether the player, a minor, answered without an adult. */
export const decidesAlone = ({ by = {} }: Agreement): boolean =>
	by.player === true && !by.guardian && !by.other
/** A minor who decides without an adult, or against one, is judged for competence. */
const competence: Reason = (agreement, { minor }) => {
	const { competence: { judged, grounds } = {}, playerDisagrees } = agreement
	const alone = decidesAlone(agreement)
	if (!minor || !(alone || playerDisagrees)) return []
	if (judged === undefined || isBlank(grounds))
		return block('competence', state('signing.competence-not-judged', { alone }))
	return alone && judged === 'not-competent'
		? block('by', state('signing.not-competent-alone'))
		: []
}
const interpreter: Reason = (agreement, { player }) => {
	const { need, who, relation, why } = agreement.interpreter ?? {}
	if (need === 'present' && mayNeverInterpret(relation))
		return block('interpreter', state('signing.interpreter-child'))
	if (need === 'present' && (isBlank(who) || relation === undefined))
		return block('interpreter', state('signing.interpreter-unnamed'))
	return need === 'needed-but-none' && isBlank(why)
		? block('interpreter', state('signing.interpreter-why'))
		: howExplained(agreement, player)
}
/** Who prefers another language than that of the papers was reached somehow: it is written how. */
function howExplained(agreement: Agreement, player: Speaking): AgreementBlock[] {
	const { need, how } = agreement.interpreter ?? {}
	const languages = languagesTold(agreement, player)
	if (languages.length === 0) return []
	if (need === undefined) return block('interpreter', state('signing.language-open', { languages }))
	return need === 'not-needed' && isBlank(how)
		? block('interpreter', state('signing.language-how', { languages }))
		: []
}
const chaperone: Reason = ({ chaperone: { offer, name, why } = {} }) => {
	if (offer === 'accepted' && isBlank(name))
		return block('chaperone', state('signing.chaperone-unnamed'))
	return offer === 'not-offered' && isBlank(why)
		? block('chaperone', state('signing.chaperone-why'))
		: []
}
const inAllHaste: readonly Reason[] = [toldWhom]
const reasons: readonly Reason[] = [
	toldWhom,
	toldWhat,
	whichAnswer,
	byWhom,
	competence,
	interpreter,
	chaperone,
]
/** @returns one reason each, in the order of the form; two of one code at one place stand once */
export function agreementBlocks(agreement: Agreement = {}, of: AgreementOf): AgreementBlock[] {
	const found = (of.urgent ? inAllHaste : reasons).flatMap((reason) => reason(agreement, of))
	return found.filter(
		({ path, code }, at) =>
			found.findIndex((other) => other.path === path && other.code === code) === at,
	)
}
