/** The player report: what to do now, what was found, size and fit, the next pair, warning signs, basis notes. */
import type { Assessment, SizeLabel } from '../assessment.ts'
import type { Clinic } from '../clinic.ts'
import type { Decisions } from '../decisions.ts'
import type { Basis } from '../finding.ts'
import { bothSides, meanOf } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { standingLines, standingWishes } from './decided.ts'
import type { Block, LwDocument } from './document.ts'
import { feetFigure } from './feet-figure.ts'
import { actionWords, dateWords, defaultWarningSigns, featureWords, shown, sizeShown } from './words.ts'

export interface ReportInput { visit: Visit; assessment: Assessment; decisions: Decisions; clinic: Clinic; /** ISO date-time of signing, undefined for a draft */ signedAt: string | undefined; draft: boolean }

/** Numbered notes: the same source is numbered once. */
class Notes {
	readonly list: string[] = []
	mark(basis: Basis): string {
		const strength = basis.strength === 'practice' && /common practice/.test(basis.source) ? '' : ` Strength: ${basis.strength}.`
		const note = `${basis.rule}${basis.threshold ? ` (${basis.threshold})` : ''}. ${basis.source}.${strength}`.replaceAll('..', '.')
		const found = this.list.indexOf(note)
		return `[${found >= 0 ? found + 1 : this.list.push(note)}]`
	}
}
type Section = (input: ReportInput, notes: Notes) => Block[]
const heading = (text: string): Block => ({ kind: 'heading', text })
const say = (text: string): Block => ({ kind: 'text', text })
const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

const alert: Section = ({ assessment: { screening }, decisions }, notes) => {
	if (screening.action === 'proceed' || screening.action === 'letter') return []
	const reasons = screening.items.filter((item) => item.action !== 'proceed' && item.action !== 'letter')
	return [{ kind: 'alert', title: `First: ${actionWords[screening.action]}`, text: `${reasons.map((item) => `${item.says} ${notes.mark(item.basis)}`).join(' ')} ${decisions.referralDone ? `Done so far: ${decisions.referralDone}` : 'Footwear advice waits until this has been looked at.'}` }]
}
const doNow: Section = ({ assessment, decisions, draft }) => {
	const blocks: Block[] = [heading('What to do now')]
	if (decisions.actions.length > 0) return [...blocks, { kind: 'actions', items: decisions.actions }]
	const { screening, growth, sizing } = assessment
	const proposed = [
		...(screening.action === 'proceed' ? [] : [{ what: capital(actionWords[screening.action]), when: screening.action === 'letter' ? 'within four weeks' : 'now', who: 'you and your clinician' }]),
		...(sizing.insideLengthMm ? [{ what: `Choose boots that measure ${shown(sizing.insideLengthMm.min)} to ${shown(sizing.insideLengthMm.max)} mm inside`, when: 'at the next purchase', who: 'you' }] : []),
		...(growth?.measureAgainBy ? [{ what: 'Have both feet measured again', when: `by ${dateWords(growth.measureAgainBy)}`, who: 'you and your guardian' }] : []),
	].slice(0, 3)
	if (proposed.length === 0) return [...blocks, say('Nothing has been decided yet.')]
	return [...blocks, ...(draft ? [{ kind: 'text', tone: 'small', text: 'Proposed from the measures; not yet decided by the clinician.' } as const] : []), { kind: 'actions', items: proposed }]
}
const found: Section = ({ visit, assessment: { sizing, ankle }, clinic }, notes) => {
	const blocks: Block[] = [heading('What we found')]
	const items: string[] = []
	const { left, right } = sizing
	if (left.lengthMm !== undefined && right.lengthMm !== undefined) {
		const gap = Math.abs(left.lengthMm - right.lengthMm)
		items.push(sizing.longerFoot === 'equal' ? `Your feet are the same length: ${shown(left.lengthMm)} mm.` : `Your ${sizing.longerFoot} foot is the longer one, by ${shown(gap)} mm. Shoes are fitted to it.`)
	} else for (const side of bothSides) if (sizing[side].lengthMm !== undefined) items.push(`Your ${side} foot is ${shown(sizing[side].lengthMm ?? 0)} mm long. The other foot was not measured.`)
	const limits = { gastrocnemius: 'the long calf muscle', 'soleus-or-capsule': 'the deep calf or the joint itself', 'anterior-block': 'a pinch at the front of the ankle', none: '', unknown: '' }
	for (const side of bothSides) {
		const { band, limitedBy } = ankle[side]
		const why = limits[limitedBy]
		if (band === 'restricted') items.push(`Your ${side} ankle bends less than usual${why ? `; what stops it is probably ${why}` : ''}.`)
		if (band === 'adequate') items.push(`Your ${side} ankle bends enough.`)
	}
	if (ankle.asymmetry === 'flag' || ankle.asymmetry === 'act') items.push('Your two ankles differ by more than measuring error. This is worth working on.')
	for (const condition of visit.conditions ?? []) items.push(`${capital(termWords(condition.condition))}${condition.side === 'none' ? '' : condition.side === 'both' ? ', both sides' : `, ${condition.side} side`}: ${condition.status}.`)
	const figure = feetFigure(sizing, clinic.colour)
	blocks.push(items.length > 0 ? { kind: 'list', items } : say('Nothing was measured yet.'))
	if (figure) blocks.push({ kind: 'figure', caption: 'Your feet seen from above, at one scale. Dashed line: where the toes bend.', ...figure })
	void notes
	return blocks
}
const measures: Section = ({ visit, assessment }) => {
	const unit = (value: number | undefined, name: string) => (value === undefined ? 'not measured' : `${shown(value)} ${name}`)
	const feet = assessment.sizing
	const rows = [
		['Heel to toe', ...bothSides.map((side) => unit(feet[side].lengthMm, 'mm'))],
		['Heel to ball', ...bothSides.map((side) => unit(feet[side].ballLengthMm, 'mm'))],
		['Width at the ball', ...bothSides.map((side) => unit(feet[side].widthMm, 'mm'))],
		['Girth at the ball', ...bothSides.map((side) => unit(feet[side].girthMm, 'mm'))],
		['Knee to wall', ...bothSides.map((side) => unit(meanOf(visit.ankles?.[side]?.lungeCm), 'cm'))],
		['Lunge angle', ...bothSides.map((side) => unit(meanOf(visit.ankles?.[side]?.lungeDeg), 'degrees'))],
	].filter((row) => row.slice(1).some((cell) => cell !== 'not measured'))
	return rows.length === 0 ? [] : [{ kind: 'table', caption: 'Your measures', head: ['', 'Left', 'Right'], rows, widths: ['*', 110, 110] }]
}
const size: Section = ({ visit, assessment: { sizing } }, notes) => {
	const { sizes, insideLengthMm, toeRoomMm } = sizing
	if (!sizes || !insideLengthMm || !toeRoomMm) return [heading('Your size'), say('Your size could not be worked out: the length of a foot is missing.')]
	const female = visit.player.sex === 'female'
	const systems: [string, SizeLabel][] = [['EU', sizes.eu], ['UK', sizes.uk], ...(sizes.usChild.scale === 'child' || sizes.uk.scale === 'child' ? [['US child', sizes.usChild] as [string, SizeLabel]] : [[female ? 'US women' : 'US men', female ? sizes.usWomen : sizes.usMen] as [string, SizeLabel]]), ['Japan (cm)', sizes.jpCm]]
	const label = (one: SizeLabel, value: number) => `${sizeShown(value)}${one.scale === 'child' && value >= one.label ? ' child' : ''}`
	const differ = sizing.findings.find((finding) => /maker/.test(finding.says))
	const fittings = bothSides.flatMap((side) => {
		const { jis, us } = sizing[side].fitting
		return jis || us ? [`${side}: ${[jis ? `${jis} on the Japanese girth scale` : '', us ? `${us} on the US width scale` : ''].filter(Boolean).join(', ')}`] : []
	})
	return [
		heading('Your size'),
		{ kind: 'text', tone: 'strong', text: `Look for ${shown(insideLengthMm.min)} to ${shown(insideLengthMm.max)} mm inside the boot (best about ${shown(insideLengthMm.target)} mm): ${shown(toeRoomMm.min)} to ${shown(toeRoomMm.max)} mm of room before the longest toe.` },
		{ kind: 'table', caption: 'Size labels for your longer foot', head: ['', ...systems.map(([name]) => name)], rows: [['Nearest label', ...systems.map(([, one]) => label(one, one.label))], ['Between sizes, try', ...systems.map(([, one]) => label(one, one.fitting))]], widths: ['*', ...systems.map(() => 78)] },
		say(`Labels differ by about one size between makers: always check the inside length. Take out the liner, stand on it, and look at the room before your longest toe.${differ ? ` ${notes.mark(differ.basis)}` : ''}`),
		...(fittings.length > 0 ? [say(`Width fitting, ${fittings.join('; ')}.`)] : []),
	]
}
const nextPair: Section = ({ assessment: { footwear }, decisions }, notes) => {
	const rows = (kind: 'seek' | 'avoid') => standingWishes(footwear.target[kind], kind, decisions).map(({ feature, wishes }) => [capital(featureWords[feature]), `${[...new Set(wishes.map((wish) => wish.says))].join(' ')} ${[...new Set(wishes.map((wish) => notes.mark(wish.basis)))].join(' ')}`])
	const seek = rows('seek')
	const avoid = rows('avoid')
	if (seek.length + avoid.length === 0) return []
	return [
		heading('Your next pair'),
		...(seek.length > 0 ? [{ kind: 'table', caption: 'Look for', head: ['Look for', 'Why'], rows: seek, widths: [135, '*'] } satisfies Block] : []),
		...(avoid.length > 0 ? [{ kind: 'table', caption: 'Stay away from', head: ['Stay away from', 'Why'], rows: avoid, widths: [135, '*'] } satisfies Block] : []),
		...footwear.contradictions.map((one) => say(`Two reasons pull apart here: ${one.says}`)),
	]
}
const raise: Section = ({ assessment: { ankle }, decisions, draft }) => {
	const decided = decisions.heelRaiseMm
	const proposed = decided ?? ankle.heelRaiseMm
	if (!proposed || (proposed.left === 0 && proposed.right === 0)) return []
	const text = proposed.left === proposed.right ? `${shown(proposed.left)} mm in both shoes` : `left ${shown(proposed.left)} mm, right ${shown(proposed.right)} mm`
	return [heading('Heel raise'), say(`${decided ? 'Your clinician proposes' : draft ? 'A suggestion, not yet decided by your clinician:' : 'A suggestion:'} a heel raise of ${text}. It goes under the liner. Check that your heel still sits firmly in the boot. It eases the ankle; it does not treat the cause. It is looked at again in about six weeks.`)]
}
const pairs: Section = ({ visit, assessment: { footwear } }) => {
	const rows = footwear.current.map((one) => {
		const pair = visit.footwear?.find((each) => each.id === one.id)
		const verdicts = { keep: 'Fits', change: 'Keep with a change', replace: 'Replace', unknown: 'Cannot say yet' }
		return [pair?.name ?? one.id, verdicts[one.verdict], one.says]
	})
	return rows.length === 0 ? [] : [heading('The pairs you have'), { kind: 'table', caption: 'Checked on the day', head: ['Pair', 'Verdict', 'Why'], rows, widths: [110, 90, '*'] }]
}
const grow: Section = ({ assessment: { growth } }, notes) => {
	if (!growth) return []
	const stage = { before: 'probably before the growth spurt', around: 'probably around the growth spurt', after: 'probably past the growth spurt', uncertain: 'not clear; we treat it as around the growth spurt' }
	const last = growth.footForecast?.at(-1)
	const cautions = growth.findings.filter((finding) => /caution/.test(finding.id))
	return [
		heading('Growing'),
		say(`Stage of growth: ${stage[growth.band]}. This is an estimate, not a measurement, and it must not be used to select players.${growth.measureAgainBy ? ` Measure both feet again by ${dateWords(growth.measureAgainBy)}, sooner if shoes feel tight.` : ''}`),
		...(last ? [say(`By ${dateWords(last.date)} your longer foot may measure between ${shown(last.lowMm, 0)} and ${shown(last.highMm, 0)} mm.`)] : []),
		...(cautions.length > 0 ? [{ kind: 'text', tone: 'small', text: cautions.map((one) => `${one.says} ${notes.mark(one.basis)}`).join(' ') } as const] : []),
	]
}
const told = new Set(['sizing', 'growth', 'footwear'])
const more: Section = ({ assessment, decisions }, notes) => {
	const chosen = new Set(decisions.lines.map((line) => line.findingId))
	// safety words always stand; the rest only where it matters or the clinician chose to say it
	const lines = standingLines(assessment, decisions).filter((line) => line.finding === undefined || (!told.has(line.topic) && !(line.topic === 'screening' && line.level === 'stop') && (line.topic === 'screening' || line.level === 'caution' || line.level === 'stop' || chosen.has(line.id))))
	return lines.length === 0 ? [] : [heading('More from your assessment'), { kind: 'list', items: lines.map((line) => `${line.says}${line.finding ? ` ${notes.mark(line.finding.basis)}` : ''}`) }]
}
const warning: Section = ({ decisions, clinic }) => [
	heading('Stop and call'),
	say(`Stop sport and call ${clinic.phone ? `us on ${clinic.phone}` : 'your clinician'} if you notice:`),
	{ kind: 'list', items: (decisions.warningSigns ?? defaultWarningSigns).map(capital) },
	say('Cannot stand on the foot, breathless, or chest pain: do not wait, call the emergency number.'),
]
const review: Section = ({ decisions, assessment }) => {
	const date = decisions.reviewDate ?? assessment.growth?.measureAgainBy
	return [heading('Next review'), say(`${date ? `${decisions.reviewDate ? 'Your next review is on' : 'Suggested:'} ${dateWords(date)}.` : 'No date is set.'} Come earlier with new boots, new pain, or when shoes get tight.`)]
}
const signature: Section = ({ clinic, signedAt, visit }) =>
	signedAt === undefined
		? [{ kind: 'text', tone: 'strong', text: 'Draft. Not signed by a clinician.' }]
		: [{ kind: 'signature', name: clinic.clinician.name, registration: `Registration ${clinic.clinician.registration}`, date: `Signed ${dateWords(signedAt)}, from measurements on ${dateWords(visit.visitDate)}${visit.visitDate === signedAt.slice(0, 10) ? '' : ' (late entry)'}` }]
const order: readonly Section[] = [alert, doNow, found, size, measures, nextPair, raise, pairs, grow, more, warning, review, signature]

/** Composes the player report as data. The same input gives the same document. */
export function playerReport(input: ReportInput): LwDocument {
	const { visit, assessment, clinic, signedAt, draft } = input
	const notes = new Notes()
	const blocks = order.flatMap((section) => section(input, notes))
	const { player, play } = visit
	return {
		title: 'Your footwear assessment',
		kind: 'player',
		language: 'en',
		draft,
		letterhead: { clinicName: clinic.name, address: clinic.address, colour: clinic.colour, ...(clinic.phone ? { phone: clinic.phone } : {}), ...(clinic.email ? { email: clinic.email } : {}), ...(clinic.logo ? { logo: clinic.logo } : {}) },
		subject: [
			['Player', `${player.givenName} ${player.familyName}`],
			['Born', dateWords(player.birthDate)],
			['Assessed', dateWords(visit.visitDate)],
			['Club', player.club ?? 'not stated'],
			['Plays', [play?.code ? termWords(play.code) : '', play?.position ?? ''].filter(Boolean).join(', ') || 'not stated'],
			['Status', draft ? 'Draft, not signed' : 'Signed, version 1'],
		],
		blocks,
		notes: notes.list,
		footer: `Prepared by ${clinic.clinician.name} (${clinic.clinician.registration}) from measurements on ${dateWords(visit.visitDate)}. ${draft ? 'Suggestions from published sources, to be reviewed by the practitioner.' : 'Suggestions from published sources were reviewed by the practitioner, whose decision is printed here.'}${assessment.growth ? ' Growth can change fit.' : ''}`,
		createdAt: signedAt ?? `${visit.visitDate}T12:00:00.000Z`,
	}
}
