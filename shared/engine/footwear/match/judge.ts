/** One model in its best size: the questions a fitter asks one after another, and the verdict. */
import type { RankedModel } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import { offsetOf } from '../../visit/shelf.ts'
import { rounded } from '../../visit/sides.ts'
import { featureName } from '../../words/en/features.ts'
import { type Answers, together } from './answer.ts'
import { askCode, askOffset } from './code-and-offset.ts'
import { askDepth, depthMarginIn } from './depth.ts'
import type { Fitter, Trial } from './fitter.ts'
import { soleJudged } from './ground.ts'
import { askLength, toeRoomIn } from './length.ts'
import { byText } from './size.ts'
import { askStuds, type StudsBySide, studsUnder } from './studs-and-joints.ts'
import { askWidth, widthMarginIn } from './width.ts'
import { askFeatures } from './wished-features.ts'

/** Reasons stand in the order of the questions; those against by points, then by rule. */
export function judge(trial: Trial, fitter: Fitter): RankedModel {
	const { model, size } = trial
	const { needs } = fitter
	const studs = studsUnder(trial, fitter)
	const onStuds = askStuds(trial, studs, fitter)
	const studsPaid = (onStuds.against ?? []).length > 0
	const answers = together([
		askLength(trial, fitter),
		askWidth(trial, fitter),
		askDepth(trial, fitter),
		fitter.onGround(soleJudged(model, fitter.value('footwear.softGroundStudMm'))),
		onStuds,
		askFeatures(trial, studs, studsPaid, fitter),
		askCode(trial, fitter),
		askOffset(trial, fitter),
	])
	return present({
		id: model.id,
		name: model.name,
		sole: model.sole,
		verdict: verdictOn(answers),
		points: pointsOf(answers, fitter),
		size: present({
			system: size.system,
			label: size.label,
			fitting: size.fitting,
			insideLengthMm: size.insideLengthMm,
			ballWidthMm: size.ballWidthMm,
		}),
		toeRoomMm: toeRoomIn(size, needs),
		widthMarginMm: widthMarginIn(size, needs),
		depthMarginMm: depthMarginIn(model, needs),
		offsetMm: offsetOf(model),
		stops: answers.stops,
		for: answers.for,
		against: answers.against.toSorted(
			(first, second) =>
				(second.points ?? 0) - (first.points ?? 0) || byText(first.rule, second.rule),
		),
		unknown: answers.unknown.map(featureName),
		unknownFeatures: answers.unknown,
		wouldChange: answers.changes.map((change) => change.says),
		changes: answers.changes,
		studs: anySide(studs),
		price: model.price,
	})
}
const anySide = (studs: StudsBySide): StudsBySide | undefined =>
	studs.left || studs.right ? studs : undefined

function verdictOn({ stops, changes }: Answers): RankedModel['verdict'] {
	if (stops.length > 0) return 'unsuitable'
	return changes.some((change) => change.toThisModel) ? 'with-changes' : 'suits'
}
/** The sum of what speaks against it, and a little for each sought feature that is not recorded. */
const pointsOf = ({ against, unknown }: Answers, { value }: Fitter): number =>
	rounded(
		against.reduce((sum, reason) => sum + (reason.points ?? 0), 0) +
			unknown.length * value('footwear.pointsUnknown'),
		2,
	)
