/**
 * The player report: what to do now, what was found, size and fit, the next pair, warning signs,
 * basis notes.
 */
import type { SizeLabel, SizingResult } from '../findings/assessment.ts'
import { bothSides, meanOf } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { ankleLimits, sideWords } from '../words/en.table.ts'
import type { Speak } from '../words/speak.ts'
import {
	actionWords,
	capital,
	conditionInWords,
	dateWords,
	defaultWarningSigns,
	featureInWords,
	shown,
	sizeShown,
} from '../words/words.ts'
import {
	amended,
	frame,
	heading,
	Notes,
	nameOf,
	playsOf,
	type ReportInput,
	raiseInWords,
	type Section,
	say,
	signature,
	small,
	speakOf,
	statusOf,
} from './base.ts'
import { chartBlocks } from './charts-section.ts'
import { standingLines, standingWishes } from './decided.ts'
import type { Block, LwDocument } from './document.ts'
import { feetFigure } from './feet-figure.ts'
import { markedLines } from './marked.ts'

export type { ReportInput } from './base.ts'

const alert: Section = ({ assessment: { screening }, decisions }, notes, t) => {
	if (screening.action === 'proceed' || screening.action === 'letter') return []
	const reasons = screening.items.filter(
		(item) => item.state === 'yes' && item.action !== 'proceed' && item.action !== 'letter',
	)
	return [
		{
			kind: 'alert',
			title: t('player.first', { action: actionWords[screening.action] }),
			text: `${reasons.map((item) => `${item.says} ${notes.mark(item.basis)}`).join(' ')} ${decisions.referralDone ? t('player.doneSoFar', { done: decisions.referralDone }) : t('player.waits')}`.trim(),
		},
	]
}
/** At most three actions: the clinician's own, or what the measures propose. */
export function actionsOf(
	{ assessment, decisions }: ReportInput,
	t: Speak,
): { items: { what: string; when: string; who: string }[]; decided: boolean } {
	if (decisions.actions.length > 0) return { items: decisions.actions, decided: true }
	const { screening, growth, sizing } = assessment
	return {
		decided: false,
		items: [
			...(screening.action === 'proceed'
				? []
				: [
						{
							what: capital(actionWords[screening.action]),
							when: screening.action === 'letter' ? t('player.whenFourWeeks') : t('player.whenNow'),
							who: t('player.whoClinician'),
						},
					]),
			...(sizing.insideLengthMm
				? [
						{
							what: t('player.chooseInside', {
								min: shown(sizing.insideLengthMm.min),
								max: shown(sizing.insideLengthMm.max),
							}),
							when: t('player.whenPurchase'),
							who: t('player.whoYou'),
						},
					]
				: []),
			...(growth?.measureAgainBy
				? [
						{
							what: t('player.measureAgain'),
							when: t('player.whenBy', { date: dateWords(growth.measureAgainBy) }),
							who: t('player.whoGuardian'),
						},
					]
				: []),
		].slice(0, 3),
	}
}
const doNow: Section = (input, _notes, t) => {
	const { items, decided } = actionsOf(input, t)
	if (items.length === 0) return [heading(t('player.doNow')), say(t('player.nothingDecided'))]
	return [
		heading(t('player.doNow')),
		...(!decided && input.draft ? [small(t('player.proposed'))] : []),
		{ kind: 'actions', items },
	]
}
/** The charts of a topic that show a course, their sources numbered with the others. */
const charts = (
	topic: 'sizing' | 'ankle' | 'growth',
	{ visit, earlier, assessment, protocol, clinic }: ReportInput,
	notes: Notes,
): Block[] =>
	chartBlocks(topic, { visit, earlier, assessment, protocol, colour: clinic.colour }, (basis) =>
		notes.mark(basis),
	)
const found: Section = (input, notes, t) => {
	const {
		visit,
		assessment: { sizing, ankle },
		clinic,
	} = input
	const items: string[] = []
	const { left, right } = sizing
	if (left.lengthMm !== undefined && right.lengthMm !== undefined) {
		const gap = Math.abs(left.lengthMm - right.lengthMm)
		items.push(
			sizing.longerFoot === 'left' || sizing.longerFoot === 'right'
				? t('player.longer', { side: sizing.longerFoot, gap: shown(gap) })
				: t('player.sameLength', { length: shown(left.lengthMm) }),
		)
	} else
		for (const side of bothSides)
			if (sizing[side].lengthMm !== undefined)
				items.push(t('player.oneFoot', { side, length: shown(sizing[side].lengthMm ?? 0) }))
	for (const side of bothSides) {
		const { band, limitedBy } = ankle[side]
		const why = ankleLimits[limitedBy]
		if (band === 'restricted')
			items.push(why ? t('player.ankleLessWhy', { side, why }) : t('player.ankleLess', { side }))
		if (band === 'adequate') items.push(t('player.ankleEnough', { side }))
	}
	if (ankle.asymmetry === 'flag' || ankle.asymmetry === 'act') items.push(t('player.anklesDiffer'))
	for (const condition of visit.conditions ?? []) {
		const words = {
			condition: capital(conditionInWords(condition.condition)),
			status: condition.status,
		}
		items.push(
			condition.side === 'none'
				? t('player.conditionNoSide', words)
				: t('player.condition', {
						...words,
						side:
							condition.side === 'both'
								? sideWords.both
								: condition.side === 'left'
									? t('common.leftSide')
									: t('common.rightSide'),
					}),
		)
	}
	const figure = feetFigure(sizing, clinic.colour, t)
	return [
		heading(t('player.found')),
		items.length > 0 ? { kind: 'list', items } : say(t('player.nothingMeasured')),
		...(figure
			? [{ kind: 'figure', caption: t('player.feetCaption'), ...figure } satisfies Block]
			: []),
		...charts('ankle', input, notes),
	]
}
const measures: Section = ({ visit, assessment }, _notes, t) => {
	const none = t('common.notMeasured')
	const unit = (value: number | undefined, name: string) =>
		value === undefined ? none : `${shown(value)} ${name}`
	const feet = assessment.sizing
	const rows = [
		[t('player.heelToToe'), ...bothSides.map((side) => unit(feet[side].lengthMm, 'mm'))],
		[t('player.heelToBall'), ...bothSides.map((side) => unit(feet[side].ballLengthMm, 'mm'))],
		[t('player.width'), ...bothSides.map((side) => unit(feet[side].widthMm, 'mm'))],
		[t('player.girth'), ...bothSides.map((side) => unit(feet[side].girthMm, 'mm'))],
		[
			t('player.lunge'),
			...bothSides.map((side) => unit(meanOf(visit.ankles?.[side]?.lungeCm), 'cm')),
		],
		[
			t('player.lungeAngle'),
			...bothSides.map((side) => unit(meanOf(visit.ankles?.[side]?.lungeDeg), 'degrees')),
		],
	].filter((row) => row.slice(1).some((cell) => cell !== none))
	return rows.length === 0
		? []
		: [
				{
					kind: 'table',
					caption: t('player.measures'),
					head: ['', t('common.left'), t('common.right')],
					rows,
					widths: ['*', 110, 110],
				},
			]
}
/** The size systems of a player, in the order the reader looks for them. */
export function labelsOf(visit: Visit, { sizes }: SizingResult): [string, SizeLabel][] {
	if (!sizes) return []
	const us: [string, SizeLabel] =
		sizes.usChild.scale === 'child' || sizes.uk.scale === 'child'
			? [termWords('usChild'), sizes.usChild]
			: visit.player.sex === 'female'
				? [termWords('usWomen'), sizes.usWomen]
				: [termWords('usMen'), sizes.usMen]
	return [
		[termWords('eu'), sizes.eu],
		[termWords('uk'), sizes.uk],
		us,
		[termWords('jpCm'), sizes.jpCm],
	]
}
const size: Section = ({ visit, assessment: { sizing } }, notes, t) => {
	const { insideLengthMm, toeRoomMm } = sizing
	const systems = labelsOf(visit, sizing)
	if (systems.length === 0 || !insideLengthMm || !toeRoomMm)
		return [heading(t('player.size')), say(t('player.noSize'))]
	const label = (one: SizeLabel, value: number) =>
		one.scale === 'child' && value >= one.label
			? t('player.child', { size: sizeShown(value) })
			: sizeShown(value)
	const differ = sizing.findings.find((finding) => /maker/.test(finding.says))
	const fittings = bothSides.flatMap((side) => {
		const { jis, us } = sizing[side].fitting
		return jis || us
			? [
					t('player.fittingSide', {
						side,
						fittings: [
							...(jis ? [t('player.fittingJis', { letter: jis })] : []),
							...(us ? [t('player.fittingUs', { letter: us })] : []),
						].join(', '),
					}),
				]
			: []
	})
	return [
		heading(t('player.size')),
		{
			kind: 'text',
			tone: 'strong',
			text: t('player.lookFor', {
				min: shown(insideLengthMm.min),
				max: shown(insideLengthMm.max),
				target: shown(insideLengthMm.target),
				roomMin: shown(toeRoomMm.min),
				roomMax: shown(toeRoomMm.max),
			}),
		},
		{
			kind: 'table',
			caption: t('player.labels'),
			head: ['', ...systems.map(([name]) => name)],
			rows: [
				[t('player.nearest'), ...systems.map(([, one]) => label(one, one.label))],
				[t('player.between'), ...systems.map(([, one]) => label(one, one.fitting))],
			],
			widths: ['*', ...systems.map(() => 78)],
		},
		say(`${t('player.howToCheck')}${differ ? ` ${notes.mark(differ.basis)}` : ''}`),
		...(fittings.length > 0 ? [say(t('player.fitting', { fittings: fittings.join('; ') }))] : []),
	]
}
/** One row a reason, so that no reason is read twice: what it asks for, what it speaks against. */
const nextPair: Section = ({ assessment: { footwear }, decisions }, notes, t) => {
	const rows = new Map<string, { seek: string[]; avoid: string[]; marks: Set<string> }>()
	for (const kind of ['seek', 'avoid'] as const)
		for (const { feature, wishes } of standingWishes(footwear.target[kind], kind, decisions))
			for (const wish of wishes) {
				const row = rows.get(wish.says) ?? { seek: [], avoid: [], marks: new Set<string>() }
				rows.set(wish.says, row)
				row.marks.add(notes.mark(wish.basis))
				const words = featureInWords(feature)
				if (!row[kind].includes(words)) row[kind].push(words)
			}
	if (rows.size === 0) return []
	const cell = (list: string[]) => capital(list.join('; '))
	return [
		heading(t('player.nextPair')),
		{
			kind: 'table',
			caption: t('player.nextCaption'),
			head: [t('player.because'), t('player.seek'), t('player.avoid')],
			rows: [...rows].map(([says, { seek, avoid, marks }]) => [
				`${says} ${[...marks].join(' ')}`,
				cell(seek),
				cell(avoid),
			]),
			widths: ['*', 130, 92],
		},
		...footwear.contradictions.map((contradiction) =>
			say(t('player.pullApart', { says: contradiction.says })),
		),
	]
}
const raise: Section = ({ assessment: { ankle }, decisions }, _notes, t) => {
	const decided = raiseInWords(decisions.heelRaiseMm, t)
	const words = decided ?? (decisions.heelRaiseMm ? undefined : raiseInWords(ankle.heelRaiseMm, t))
	return words === undefined
		? []
		: [
				heading(t('player.raise')),
				say(
					`${decided ? t('player.raiseDecided', { raise: words }) : t('player.raiseSuggested', { raise: words })} ` +
						`${t('player.raiseHow')}`,
				),
			]
}
/** What the clinician marked: models to try on, changes to the boot and lacing. */
const marked: Section = ({ decisions }, _notes, t) => {
	const models = markedLines(decisions, 'model').map((one) => one.says ?? ''),
		work = markedLines(decisions, 'work').map((one) => one.says ?? '')
	return [
		...(models.length > 0
			? [
					heading(t('player.toTry')),
					{ kind: 'list', items: models } satisfies Block,
					say(t('player.toTryHow')),
				]
			: []),
		...(work.length > 0
			? [heading(t('player.work')), { kind: 'list', items: work } satisfies Block]
			: []),
	]
}
const pairs: Section = ({ visit, assessment: { footwear } }, _notes, t) => {
	const verdicts = {
		keep: t('player.keep'),
		change: t('player.change'),
		replace: t('player.replace'),
		unknown: t('player.unknown'),
	}
	const rows = footwear.current.map((one) => [
		visit.footwear?.find((pair) => pair.id === one.id)?.name ?? one.id,
		verdicts[one.verdict],
		one.says,
	])
	return rows.length === 0
		? []
		: [
				heading(t('player.pairs')),
				{
					kind: 'table',
					caption: t('player.pairsCaption'),
					head: [t('player.pair'), t('player.verdict'), t('common.why')],
					rows,
					widths: [110, 90, '*'],
				},
			]
}
const grow: Section = (input, notes, t) => {
	const { growth } = input.assessment
	if (!growth) return []
	const stages = {
		before: t('player.stageBefore'),
		around: t('player.stageAround'),
		after: t('player.stageAfter'),
		uncertain: t('player.stageUncertain'),
	}
	const last = growth.footForecast?.at(-1)
	// The cautions of every growth estimate, in the player's words; the estimate and its use stand in
	// the sentence of the stage.
	const said = (id: string) => growth.findings.find((finding) => finding.id === id)
	const bias = said('growth.bias')
	return [
		heading(t('player.growing')),
		say(
			[
				t('player.stage', { stage: stages[growth.band] }),
				...(growth.measureAgainBy
					? [t('player.growAgain', { date: dateWords(growth.measureAgainBy) })]
					: []),
				...(last
					? [
							t('player.forecast', {
								date: dateWords(last.date),
								low: shown(last.lowMm, 0),
								high: shown(last.highMm, 0),
							}),
						]
					: []),
			].join(' '),
		),
		...charts('sizing', input, notes),
		...charts('growth', input, notes),
		...(bias
			? [
					small(
						`${t('player.growthCautions')}${said('growth.girls') ? ` ${t('player.growthGirls')}` : ''} ` +
							`${notes.mark(bias.basis)}`,
					),
				]
			: []),
	]
}
const told = new Set(['sizing', 'growth', 'footwear'])
const more: Section = ({ assessment, decisions }, notes, t) => {
	const chosen = new Set(decisions.lines.map((line) => line.findingId))
	// safety words always stand; the rest only where it matters or the clinician chose to say it
	const lines = standingLines(assessment, decisions).filter(
		(line) =>
			line.finding === undefined ||
			(!told.has(line.topic) &&
				!(line.topic === 'screening' && line.level === 'stop') &&
				(line.topic === 'screening' ||
					line.level === 'caution' ||
					line.level === 'stop' ||
					chosen.has(line.id))),
	)
	return lines.length === 0
		? []
		: [
				heading(t('player.more')),
				{
					kind: 'list',
					items: lines.map(
						(line) => `${line.says}${line.finding ? ` ${notes.mark(line.finding.basis)}` : ''}`,
					),
				},
			]
}
const warning: Section = ({ decisions, clinic }, _notes, t) => [
	heading(t('player.stop')),
	say(clinic.phone ? t('player.stopIfUs', { phone: clinic.phone }) : t('player.stopIf')),
	{ kind: 'list', items: (decisions.warningSigns ?? defaultWarningSigns).map(capital) },
	say(t('player.emergency')),
]
const review: Section = ({ decisions, assessment }, _notes, t) => {
	const suggested = assessment.growth?.measureAgainBy
	const when = decisions.reviewDate
		? t('player.reviewOn', { date: dateWords(decisions.reviewDate) })
		: suggested
			? t('player.reviewSuggested', { date: dateWords(suggested) })
			: t('player.reviewNone')
	return [heading(t('player.review')), say(`${when} ${t('player.reviewEarlier')}`)]
}
const order: readonly Section[] = [
	(input, _notes, t) => amended(input, t),
	alert,
	doNow,
	found,
	size,
	measures,
	nextPair,
	marked,
	raise,
	pairs,
	grow,
	more,
	warning,
	review,
	(input, _notes, t) => signature(input, t),
]

/** Composes the player report as data. The same input gives the same document. */
export function playerReport(input: ReportInput): LwDocument {
	const { visit, clinic } = input
	const t = speakOf(clinic)
	const notes = new Notes(t)
	const blocks = order.flatMap((section) => section(input, notes, t))
	return {
		...frame(input, t),
		title: t('player.title'),
		kind: 'player',
		subject: [
			[t('subject.player'), nameOf(visit)],
			[t('subject.born'), dateWords(visit.player.birthDate)],
			[t('subject.assessed'), dateWords(visit.visitDate)],
			[t('subject.club'), visit.player.club ?? t('common.notStated')],
			[t('subject.plays'), playsOf(visit, t)],
			[t('subject.status'), statusOf(input, t)],
		],
		blocks,
		notes: notes.list,
	}
}
