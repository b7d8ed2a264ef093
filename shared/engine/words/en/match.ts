/**
 * What is said of a model of the shelf. For the clinician alone: what the player is to try is what
 * the clinician marks.
 */
import type { JointName } from '../../visit/shelf.ts'
import { type Code, type Feature, soles, surfaces } from '../../visit/terms.ts'
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { aFeature, featureIs, featureName, ruleList, soleName } from './features.ts'
import { amount, count, listed, number, ofSide, term, terms, together } from './format.ts'
import { groundSentences } from './match-ground.ts'
import { type Part, spokenParts } from './parts.ts'
import { type SizeOfModel, sizeWords } from './sizes.ts'

const lengthSentences = {
	'match.too-short': sentence<{ toeRoomMm: number; leastMm: number }>({
		clinician: ({ toeRoomMm, leastMm }) =>
			`Too short: toe room ${amount(toeRoomMm, 'mm')} in its longest fitting size, ` +
			`${amount(leastMm, 'mm')} is the least.`,
	}),
	'match.too-long': sentence<{ toeRoomMm: number; mostMm: number }>({
		clinician: ({ toeRoomMm, mostMm }) =>
			`Too long: toe room ${amount(toeRoomMm, 'mm')} in the nearest size, ` +
			`${amount(mostMm, 'mm')} is the most.`,
	}),
	'match.toe-room-above': sentence<{ toeRoomMm: number; leastMm: number; mostMm: number }>({
		clinician: ({ toeRoomMm, leastMm, mostMm }) =>
			`Toe room ${amount(toeRoomMm, 'mm')} is above the band of ${number(leastMm)} to ` +
			`${amount(mostMm, 'mm')}.`,
	}),
	'match.toe-room': sentence<{ toeRoomMm: number; targetMm: number }>({
		clinician: ({ toeRoomMm, targetMm }) =>
			`Toe room ${amount(toeRoomMm, 'mm')}, target ${amount(targetMm, 'mm')}.`,
	}),
	'match.toe-room-target': sentence<{ offTargetMm: number; direction: 'below' | 'above' }>({
		clinician: ({ offTargetMm, direction }) =>
			`Toe room is ${amount(offTargetMm, 'mm')} ${direction} the target.`,
	}),
	'match.change-to-least-length': sentence<{ leastMm: number }>({
		clinician: ({ leastMm }) => `An inside length of ${amount(leastMm, 'mm')} or more.`,
	}),
	'match.change-length': sentence<{ leastMm: number; mostMm: number }>({
		clinician: ({ leastMm, mostMm }) =>
			`A size with an inside length of ${number(leastMm)} to ${amount(mostMm, 'mm')}.`,
	}),
}
const widthSentences = {
	'match.too-narrow': sentence<{ shortMm: number; upperGives: boolean }>({
		clinician: ({ shortMm, upperGives }) =>
			`Too narrow: ${amount(shortMm, 'mm')} narrower than the wider ` +
			`foot${upperGives ? ', more than its soft upper gives' : ''}.`,
	}),
	'match.tight-gives': sentence<{ narrowMm: number }>({
		clinician: ({ narrowMm }) =>
			`${amount(narrowMm, 'mm')} narrow at the ball, which a soft upper gives.`,
	}),
	'match.tight': sentence<{ narrowMm: number }>({
		clinician: ({ narrowMm }) => `${amount(narrowMm, 'mm')} narrow at the ball.`,
	}),
	'match.loose': sentence<{ marginMm: number }>({
		clinician: ({ marginMm }) =>
			`${amount(marginMm, 'mm')} of room at the ball: loose. A thicker sock or lacing takes up some.`,
	}),
	'match.width': sentence<{ marginMm: number }>({
		clinician: ({ marginMm }) =>
			`Width at the ball fits: ${amount(marginMm, 'mm')} over the wider foot.`,
	}),
	'match.change-width': sentence<{ insideMm: number }>({
		clinician: ({ insideMm }) => `A wider fitting: ${amount(insideMm, 'mm')} inside at the ball.`,
	}),
	'match.change-fitting': sentence<{ widerMm: number }>({
		clinician: ({ widerMm }) => `A fitting ${amount(widerMm, 'mm')} wider.`,
	}),
	'match.change-by-stretching': sentence<{ stretchMm: number; limitMm: number }>({
		clinician: ({ stretchMm, limitMm }) =>
			`Stretching at the ball by about ${amount(stretchMm, 'mm')} (limit ${amount(limitMm, 'mm')}).`,
	}),
}
const depthSentences = {
	'match.too-shallow': sentence<{ shortMm: number }>({
		clinician: ({ shortMm }) => `Too shallow over the toes by ${amount(shortMm, 'mm')}.`,
	}),
	'match.shallow': sentence<{ shortMm: number }>({
		clinician: ({ shortMm }) => `Shallow over the toes by ${amount(shortMm, 'mm')}.`,
	}),
	'match.depth': sentence<{ marginMm: number }>({
		clinician: ({ marginMm }) => `Depth over the toes: ${amount(marginMm, 'mm')} to spare.`,
	}),
	'match.change-liner': sentence<{ linerMm: number }>({
		clinician: ({ linerMm }) => `A thinner liner: the one inside is ${amount(linerMm, 'mm')}.`,
	}),
}
/** What can be done about a stud under a joint, and where that ends. */
const studWork = (removable: boolean): string =>
	removable
		? 'take the stud out, or put in a lower one. Check grip and the rules of the competition; if ' +
			'the gap makes the boot rock, choose another sole.'
		: 'have the stud lowered, or choose a sole with studs placed elsewhere. A moulded stud can be ' +
			'cut down but not moved: not below the thickness of the plate, grip is lost there, the cut ' +
			'must be smooth, and the maker no longer answers for the boot.'
const studSentences = {
	'match.stud-clear': sentence<{ side: Side; joint: JointName; nearestMm: number }>({
		clinician: ({ side, joint, nearestMm }) =>
			`No stud near the ${side} ${joint} (nearest ${amount(nearestMm, 'mm')}).`,
	}),
	'match.stud-under': sentence<{
		side: Side
		joint: JointName
		nearestMm: number
		/** A sole of many studs, which share the load. */
		shared: boolean
	}>({
		clinician: ({ side, joint, nearestMm, shared }) =>
			`A stud stands ${amount(nearestMm, 'mm')} from the ${side} ${joint}, a joint at ` +
			`risk${shared ? '; its many studs share the load' : ''}.`,
	}),
	'match.change-stud': sentence<{ sides: readonly Side[]; joint: JointName; removable: boolean }>({
		clinician: ({ sides, joint, removable }) =>
			`At the ${listed(sides)} ${joint}: ${studWork(removable)}`,
	}),
}
const codeAndOffsetSentences = {
	'match.code': sentence<{ madeFor: readonly Code[]; code: Code }>({
		clinician: ({ madeFor, code }) =>
			`Made for ${terms(madeFor)}, not for ${term(code)}: check base and studs for the task.`,
	}),
	'match.change-by-raise': sentence<{ raiseMm: number; offsetMm: number; soughtMm: number }>({
		clinician: ({ raiseMm, offsetMm, soughtMm }) =>
			`A heel raise of ${amount(raiseMm, 'mm')} inside brings the ` +
			`${amount(offsetMm, 'mm')} offset to ${amount(soughtMm, 'mm')}.`,
	}),
	'match.raise-too-much': sentence<{ raiseMm: number; offsetMm: number; limitMm: number }>({
		clinician: ({ raiseMm, offsetMm, limitMm }) =>
			`Its offset is ${amount(offsetMm, 'mm')}; the ${amount(raiseMm, 'mm')} of heel raise it ` +
			`lacks is above the ${amount(limitMm, 'mm')} limit in use.`,
	}),
}
/** A feature and the rules that wish it, by id. */
type Wished = { feature: Feature; rules: readonly string[] }
const wishSentences = {
	'match.has': sentence<Wished>({
		clinician: ({ feature, rules }) =>
			`Has what is sought: ${featureName(feature)} (${ruleList(rules)}).`,
	}),
	'match.lacks': sentence<Wished>({
		clinician: ({ feature, rules }) =>
			`Lacks what is sought: ${featureName(feature)} (${ruleList(rules)}).`,
	}),
	'match.better-avoided': sentence<Wished>({
		clinician: ({ feature, rules }) =>
			`Has what is better avoided: ${featureName(feature)} (${ruleList(rules)}).`,
	}),
	'match.must-avoid': sentence<Wished>({
		clinician: ({ feature, rules }) =>
			`Has what must be avoided: ${featureName(feature)} (${ruleList(rules)}).`,
	}),
	'match.must-have': sentence<Wished>({
		clinician: ({ feature, rules }) =>
			`Lacks what it must have: ${featureName(feature)} (${ruleList(rules)}).`,
	}),
	'match.in-place-of': sentence<Wished & { sought: Feature }>({
		clinician: ({ feature, sought, rules }) =>
			`Has ${aFeature(feature)} where ${aFeature(sought)} ${featureIs(sought)} sought ` +
			`(${ruleList(rules)}).`,
	}),
}
const reasonSentences = {
	...lengthSentences,
	...widthSentences,
	...depthSentences,
	...groundSentences,
	...studSentences,
	...codeAndOffsetSentences,
	...wishSentences,
}
interface Proposed {
	name: string
	size: SizeOfModel
	withChanges: boolean
}
const shelfSentences = {
	'footwear.shelf-unmatched': sentence<{ lacks: 'foot-length' | 'models' }>({
		clinician: ({ lacks }) =>
			lacks === 'foot-length'
				? 'The shelf is not matched: measure the length of both feet.'
				: 'The shelf holds no model on sale.',
	}),
	'footwear.shelf-none': sentence<{ models: number; stops: readonly Part[] }>({
		clinician: ({ models, stops }) =>
			together(
				models === 1
					? 'The one model on the shelf does not pass:'
					: `None of the ${count(models, 'model')} on the shelf passes:`,
				...spokenParts(reasonSentences, stops, 'clinician'),
			),
	}),
	'footwear.shelf': sentence<{ models: readonly Proposed[] }>({
		clinician: ({ models }) => {
			const named = models.map(
				({ name, size, withChanges }) =>
					`${name}, ${sizeWords(size)}${withChanges ? ' (with changes)' : ''}`,
			)
			return (
				`First on the shelf for this player: ${named.join('; ')}. Try ` +
				`${models.length === 1 ? 'it' : 'them'} on with the socks, and the insert if one is worn.`
			)
		},
	}),
	'footwear.stud': sentence<{
		model: string
		side: Side
		joint: JointName
		nearestMm: number
		removable: boolean
		/** What can be done was told of another one. */
		isTold?: boolean
	}>({
		clinician: ({ model, side, joint, nearestMm, removable, isTold }) =>
			`In ${model} a stud stands under the ${side} ${joint} (${amount(nearestMm, 'mm')} from it)` +
			(isTold ? '.' : `: ${studWork(removable)}`),
	}),
	'footwear.stud-unplaced': sentence<{ side: 'left' | 'right' | 'both' }>({
		clinician: ({ side }) =>
			`Studs are not checked against ${ofSide(side, 'foot', 'feet')}, where a joint is at risk: ` +
			'measure length, heel to ball and ball width.',
	}),
}
export const matchSentences = { ...reasonSentences, ...shelfSentences }
/** Names of its numbers that are no measure of the visit. */
export const matchReadings: Readonly<Record<string, string>> = {
	fitLengthMm: 'length to fit',
	insertHeelCupMm: 'insert, heel cup',
	insertForefootMm: 'insert under the forefoot',
	insideBallWidthMm: 'inside ball width',
	insideLengthMm: 'inside length',
	linerOutMm: 'liner taken out',
	nearestStudMm: 'stud to joint',
	studToFirstHeadMm: 'nearest stud to the first metatarsal head',
	studToFifthHeadMm: 'nearest stud to the fifth metatarsal head',
	studToHeelMm: 'nearest stud to the heel centre',
	toeBoxDepthMm: 'toe-box depth',
	toeRoomInFirstMm: 'toe room in the first',
	toeRoomInSecondMm: 'toe room in the second',
	toeRoomInThirdMm: 'toe room in the third',
	widerFootMm: 'wider foot',
	...Object.fromEntries(
		soles.flatMap((sole) =>
			surfaces.map((surface) => [`${sole}-on-${surface}`, `${soleName(sole)} on ${term(surface)}`]),
		),
	),
}
