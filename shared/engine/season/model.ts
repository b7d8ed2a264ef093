/**
 * The rotation as a mixed-integer programme in CPLEX LP text: a pure function of the problem, in a
 * fixed order, with fixed decimals.
 * Pass 1 minimises what cannot be met and unsuitability; pass 2 keeps that and evens out wear,
 * sharing and switches.
 */
import {
	fixedUses,
	noPairPoints,
	openMinutes,
	type Rotation,
	type SeasonProblem,
	stillWet,
	trainingAhead,
	type Use,
} from './problem.ts'

type Term = readonly [number, string]
interface Row {
	name: string
	terms: Term[]
	sense: '<=' | '>=' | '='
	right: number
}
export interface Model {
	rows: Row[]
	/** tier 1: unmet wishes, fixed as they are before pass 2; tier 2: suitability */ tier1: Term[]
	tier2: Term[]
	tier3: Term[]
	binaries: string[]
	bounds: string[]
	/** pairs and minutes of each variable of use: x (whole session) and y (part of one) */ uses: {
		name: string
		slot: number
		pair: number
		minutes: number
		part?: string
	}[]
	fixed: Use[][]
}
/** Six decimals at most, no exponent. */
const decimal = (value: number): string => {
	const text = value.toFixed(6).replace(/\.?0+$/, '')
	return text === '-0' ? '0' : text
}

/** Maximal runs of sessions in which each two conflict; two for a lone conflict. */
function cliques(
	order: readonly number[],
	conflict: (s: number, k: number) => boolean,
): number[][] {
	const found: number[][] = []
	const covered = new Set<string>()
	for (const [at, s] of order.entries()) {
		const clique = [s]
		for (const k of order.slice(at + 1)) {
			if (!conflict(s, k)) {
				if (!order.slice(at + 1).some((later) => later >= k && conflict(s, later))) break
				continue
			}
			if (clique.every((one) => conflict(one, k))) clique.push(k)
			else {
				if (!covered.has(`${s} ${k}`)) found.push([s, k])
				covered.add(`${s} ${k}`)
			}
		}
		if (clique.length < 2) continue
		if (clique.some((a, i) => clique.slice(i + 1).some((b) => !covered.has(`${a} ${b}`))))
			found.push(clique)
		for (const [i, a] of clique.entries())
			for (const b of clique.slice(i + 1)) covered.add(`${a} ${b}`)
	}
	return found
}

export function buildModel(problem: SeasonProblem): Model {
	const { slots, pairs, cost, weights } = problem
	const fixed = fixedUses(problem)
	const rows: Row[] = []
	const model: Model = {
		rows,
		tier1: [],
		tier2: [],
		tier3: [],
		binaries: [],
		bounds: [],
		uses: [],
		fixed,
	}
	const x = (s: number, p: number) => `x${s}_${p}`
	const open = slots.map((_, s) => openMinutes(problem, s, fixed[s]!))
	const has = (s: number, p: number): boolean =>
		open[s]! > 0 && typeof cost[s]![p] === 'number' && !fixed[s]!.some((use) => use.pair === p)
	/** minutes of pair p in session s as a term */
	const minutes = (s: number, p: number): Term[] =>
		!has(s, p) ? [] : slots[s]!.split ? [[1, `y${s}_${p}`]] : [[open[s]!, x(s, p)]]
	const fixedMinutes = (s: number, p: number): number =>
		fixed[s]!.filter((use) => use.pair === p).reduce((sum, one) => sum + one.minutes, 0)
	const fixedUse = (s: number, p: number): number => (fixedMinutes(s, p) > 0 ? 1 : 0)

	for (const [s, slot] of slots.entries()) {
		if (open[s]! <= 0) continue
		const able = pairs.flatMap((_, p) => (has(s, p) ? [p] : []))
		const u = `u${s}`
		model.binaries.push(u)
		model.tier1.push([noPairPoints(problem, s), u])
		for (const p of able) model.binaries.push(x(s, p))
		if (slot.split) {
			rows.push({
				name: `a${s}`,
				terms: [...able.map((p): Term => [1, `y${s}_${p}`]), [open[s]!, u]],
				sense: '=',
				right: open[s]!,
			})
			for (const p of able)
				rows.push({
					name: `b${s}_${p}`,
					terms: [
						[1, `y${s}_${p}`],
						[-open[s]!, x(s, p)],
					],
					sense: '<=',
					right: 0,
				})
			// a pair counts as worn only with some time in it, and boots are not changed for a few
			// minutes
			for (const p of able)
				rows.push({
					name: `n${s}_${p}`,
					terms: [
						[1, `y${s}_${p}`],
						[-Math.max(1, Math.min(problem.shortestPartMinutes, open[s]!)), x(s, p)],
					],
					sense: '>=',
					right: 0,
				})
			const more = `e${s}`
			model.bounds.push(`0 <= ${more} <= 1`)
			rows.push({
				name: `t${s}`,
				terms: [...able.map((p): Term => [1, x(s, p)]), [-1, more]],
				sense: '<=',
				right: 1,
			})
			model.tier1.push([weights.change, more])
		} else
			rows.push({
				name: `a${s}`,
				terms: [...able.map((p): Term => [1, x(s, p)]), [1, u]],
				sense: '=',
				right: 1,
			})
		for (const p of able) {
			for (const [factor, name] of minutes(s, p))
				model.tier2.push([((cost[s]![p] as number) / 60) * factor, name])
			model.uses.push({
				name: x(s, p),
				slot: s,
				pair: p,
				minutes: open[s]!,
				...(slot.split ? { part: `y${s}_${p}` } : {}),
			})
		}
		if (slot.pin !== undefined && has(s, slot.pin)) {
			const miss = `m${s}`
			model.bounds.push(`0 <= ${miss} <= 1`)
			rows.push({
				name: `p${s}`,
				terms: [
					[1, x(s, slot.pin)],
					[1, miss],
				],
				sense: '>=',
				right: 1,
			})
			model.tier1.push([weights.pin, miss])
		}
	}
	const touched = (p: number) => slots.flatMap((_, s) => (has(s, p) || fixedUse(s, p) ? [s] : []))
	for (const [p] of pairs.entries()) {
		const order = touched(p)
		const free = (list: readonly number[]): Term[] =>
			list.flatMap((s) => (has(s, p) ? [[1, x(s, p)] as Term] : []))
		const settledIn = (list: readonly number[]): number =>
			list.reduce((sum, s) => sum + fixedUse(s, p), 0)
		for (const [n, clique] of cliques(
			order,
			(s, k) => slots[s]!.ground === 'wet' && stillWet(problem, p, s, k),
		).entries()) {
			const terms = free(clique)
			if (terms.length > 0)
				rows.push({
					name: `h${p}_${n}`,
					terms,
					sense: '<=',
					right: Math.max(0, 1 - settledIn(clique)),
				})
		}
		const lax = new Set<number>()
		for (const [n, clique] of cliques(
			order,
			(s, k) => slots[s]!.ground !== 'wet' && stillWet(problem, p, s, k),
		).entries()) {
			const terms = free(clique)
			if (terms.length === 0) continue
			const later = clique.slice(1)
			for (const k of later) lax.add(k)
			rows.push({
				name: `d${p}_${n}`,
				terms: [...terms, ...later.map((k): Term => [-1, `v${k}_${p}`])],
				sense: '<=',
				right: 1 - settledIn(clique),
			})
		}
		for (const k of lax) {
			// a settled use that was not dry is nobody's choice any more: it is allowed for and costs
			// nothing
			if (!has(k, p)) {
				model.bounds.push(`0 <= v${k}_${p} <= 1`)
				continue
			}
			rows.push({
				name: `w${k}_${p}`,
				terms: [
					[1, `v${k}_${p}`],
					[-1, x(k, p)],
				],
				sense: '<=',
				right: 0,
			})
			model.tier1.push([weights.notDry, `v${k}_${p}`])
		}
		for (const k of order) {
			const match = slots[k]!
			if (match.kind !== 'match' || !has(k, p)) continue
			const first = match.startHour - 24 * weights.familiarDays
			// before the season's first fortnight is over, what was worn last year is not known: nothing
			// is asked
			if (first < slots[0]!.startHour) continue
			const before = order.filter(
				(s) => slots[s]!.kind === 'training' && s < k && slots[s]!.startHour >= first,
			)
			if (settledIn(before) > 0) continue
			model.bounds.push(`0 <= f${k}_${p} <= 1`)
			model.tier1.push([weights.unfamiliar, `f${k}_${p}`])
			rows.push({
				name: `g${k}_${p}`,
				terms: [
					[1, x(k, p)],
					...free(before).map(([, name]): Term => [-1, name]),
					[-1, `f${k}_${p}`],
				],
				sense: '<=',
				right: 0,
			})
		}
	}
	for (const [c, cap] of problem.caps.entries())
		for (const [w, week] of cap.weeks.entries()) {
			const terms = week.slots.flatMap((s) => cap.pairs.flatMap((p) => minutes(s, p)))
			const used = week.slots.reduce(
				(sum, s) => sum + cap.pairs.reduce((one, p) => one + fixedMinutes(s, p), 0),
				0,
			)
			if (terms.length > 0)
				rows.push({
					name: `c${c}_${w}`,
					terms,
					sense: '<=',
					right: Math.max(0, week.minutes - used),
				})
		}
	const ahead = trainingAhead(problem)
	for (const [p, pair] of pairs.entries()) {
		if (pair.shareMin === undefined && pair.shareMax === undefined) continue
		const trainings = slots.flatMap((slot, s) =>
			slot.kind === 'training' && !slot.past ? [s] : [],
		)
		const terms = trainings.flatMap((s) => minutes(s, p))
		const settled = trainings.reduce((sum, s) => sum + fixedMinutes(s, p), 0)
		if (pair.shareMax !== undefined) {
			rows.push({
				name: `so${p}`,
				terms: [...terms, [-1, `o${p}`]],
				sense: '<=',
				right: pair.shareMax * ahead - settled,
			})
			model.tier1.push([weights.shareBound / 60, `o${p}`])
		}
		if (pair.shareMin !== undefined) {
			rows.push({
				name: `sr${p}`,
				terms: [...terms, [1, `r${p}`]],
				sense: '>=',
				right: pair.shareMin * ahead - settled,
			})
			model.tier1.push([weights.shareBound / 60, `r${p}`])
		}
	}
	const total = open.reduce((sum, one) => sum + one, 0)
	for (const [p, pair] of pairs.entries()) {
		const terms = slots.flatMap((_, s) => minutes(s, p))
		if (terms.length === 0) continue
		const start =
			pair.startMinutes +
			slots.reduce((sum, slot, s) => sum + (slot.counts ? fixedMinutes(s, p) : 0), 0)
		rows.push({ name: `l${p}`, terms, sense: '<=', right: Math.max(0, pair.lifeMinutes - start) })
		rows.push({
			name: `z${p}`,
			terms: [...terms.map(([factor, name]): Term => [factor / pair.lifeMinutes, name]), [-1, 'z']],
			sense: '<=',
			right: -Math.min(1, start / pair.lifeMinutes),
		})
		rows.push({
			name: `s${p}`,
			terms: [...terms.map(([factor, name]): Term => [factor / total, name]), [-1, 'q']],
			sense: '<=',
			right: 0,
		})
		for (const [factor, name] of terms)
			model.tier3.push([
				(weights.price * pair.relativePrice * factor) / 60 + (0.0001 * (p + 1) * factor) / 60,
				name,
			])
	}
	model.tier3.push([weights.wear, 'z'], [weights.share, 'q'])
	for (let s = 0; s + 1 < slots.length; s++) {
		if (
			open[s]! <= 0 ||
			open[s + 1]! <= 0 ||
			slots[s + 1]!.startHour - slots[s]!.startHour >= weights.switchHours
		)
			continue
		const both = pairs.flatMap((_, p) => (has(s, p) && has(s + 1, p) ? [p] : []))
		if (both.length < 2) continue
		model.bounds.push(`0 <= k${s} <= 1`)
		model.tier3.push([weights.switchOver, `k${s}`])
		for (const p of both)
			rows.push({
				name: `k${s}_${p}`,
				terms: [
					[1, x(s, p)],
					[-1, x(s + 1, p)],
					[-1, `k${s}`],
				],
				sense: '<=',
				right: 0,
			})
	}
	return model
}

/** Terms added up by name, in the order they first came. */
function gathered(terms: readonly Term[]): Term[] {
	const sum = new Map<string, number>()
	for (const [factor, name] of terms) sum.set(name, (sum.get(name) ?? 0) + factor)
	return [...sum].map(([name, factor]) => [factor, name])
}
function wrapped(start: string, terms: readonly Term[], end = ''): string {
	const lines: string[] = []
	let line = start
	for (const [factor, name] of gathered(terms)) {
		const piece = ` ${factor < 0 ? '-' : '+'} ${decimal(Math.abs(factor))} ${name}`
		if (line.length + piece.length > 200) {
			lines.push(line)
			line = ' '
		}
		line += piece
	}
	return [...lines, `${line}${end}`].join('\n')
}
const sumOf = (terms: readonly Term[], values: ReadonlyMap<string, number>): number =>
	terms.reduce((sum, [factor, name]) => sum + factor * (values.get(name) ?? 0), 0)
/** What the first pass reached: tier 1 and tier 2. */
export const tierValues = (
	model: Model,
	values: ReadonlyMap<string, number>,
): { tier1: number; tier2: number } => ({
	tier1: sumOf(model.tier1, values),
	tier2: sumOf(model.tier2, values),
})

/**
 * LP text of a pass. Pass 2 needs the values of the first: its unmet wishes are fixed and its
 * suitability kept.
 */
export function lpText(model: Model, first?: ReadonlyMap<string, number>): string {
	const rows = [...model.rows]
	const bounds = [...model.bounds]
	if (first) {
		const fixedNames = new Set<string>()
		for (const [, name] of gathered(model.tier1)) {
			fixedNames.add(name)
			rows.push({
				name: `fix_${name}`,
				terms: [[1, name]],
				sense: '<=',
				right: Math.max(0, Math.round((first.get(name) ?? 0) * 1e6) / 1e6),
			})
		}
		if (model.tier2.length > 0)
			rows.push({
				name: 'keep',
				terms: model.tier2,
				sense: '<=',
				right: sumOf(model.tier2, first) + 0.0005,
			})
	}
	const goal = gathered(first ? model.tier3 : [...model.tier1, ...model.tier2]).filter(
		([factor]) => factor !== 0,
	)
	const safe: Term[] = goal.length > 0 ? goal : [[0, 'z']]
	return [
		'Minimize',
		wrapped(' obj:', safe),
		'Subject To',
		' zz: + 1 z <= 1',
		...rows.map((row) =>
			wrapped(` ${row.name}:`, row.terms, ` ${row.sense} ${decimal(row.right)}`),
		),
		'Bounds',
		...bounds.map((bound) => ` ${bound}`),
		'Binary',
		...model.binaries.map((binary) => ` ${binary}`),
		'End',
		'',
	].join('\n')
}

/** The rotation that values of the variables mean; settled minutes come first in each session. */
export function rotationOf(model: Model, values: ReadonlyMap<string, number>): Rotation {
	const uses = model.fixed.map((list) => [...list])
	for (const use of model.uses) {
		const minutes =
			use.part === undefined
				? (values.get(use.name) ?? 0) > 0.5
					? use.minutes
					: 0
				: (values.get(use.part) ?? 0)
		if (minutes > 1e-4)
			uses[use.slot]!.push({ pair: use.pair, minutes: Math.round(minutes * 1e4) / 1e4 })
	}
	return { uses }
}
