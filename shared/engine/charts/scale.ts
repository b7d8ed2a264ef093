/** Nice ticks: round numbers, and first days of months. */
const dayMs = 86_400_000
const monthNames = [
	'Jan',
	'Feb',
	'Mar',
	'Apr',
	'May',
	'Jun',
	'Jul',
	'Aug',
	'Sep',
	'Oct',
	'Nov',
	'Dec',
]
const monthSteps = [1, 2, 3, 6, 12, 24, 60, 120]
export interface Tick {
	at: number
	label: string
}

/**
 * The smallest round step (1, 2 or 5 times a power of ten) that cuts `span` into at most `most`
 * parts.
 * @internal
 */
export function niceStep(span: number, most: number): number {
	const raw = span / Math.max(1, most)
	const power = 10 ** Math.floor(Math.log10(raw))
	return power * ([1, 2, 5].find((factor) => factor * power >= raw * (1 - 1e-9)) ?? 10)
}
/** Round ticks from min to max, at most about `most` of them. */
export function innerTicks(min: number, max: number, most: number): Tick[] {
	const step = niceStep(max - min, most)
	const first = Math.ceil(min / step - 1e-9),
		last = Math.floor(max / step + 1e-9)
	return Array.from({ length: Math.max(0, last - first + 1) }, (_, index) =>
		tick((first + index) * step, step),
	)
}
function tick(at: number, step: number): Tick {
	const digits = Math.max(0, -Math.floor(Math.log10(step) + 1e-9))
	return { at, label: String(Number(at.toFixed(digits))) }
}
/** Ticks on first days of months between two day numbers, at most `most` of them. */
export function monthTicks(minDay: number, maxDay: number, most: number): Tick[] {
	const monthOf = (day: number) => {
		const date = new Date(day * dayMs)
		return date.getUTCFullYear() * 12 + date.getUTCMonth()
	}
	const first = monthOf(minDay),
		last = monthOf(maxDay)
	const dayOf = (month: number) => Date.UTC(Math.floor(month / 12), month % 12, 1) / dayMs
	const ticks = (step: number) => {
		const found: Tick[] = []
		for (let month = Math.ceil(first / step) * step; month <= last; month += step)
			if (dayOf(month) >= minDay)
				found.push({
					at: dayOf(month),
					label:
						step >= 12
							? String(Math.floor(month / 12))
							: `${monthNames[month % 12]} ${Math.floor(month / 12)}`,
				})
		return found
	}
	return monthSteps.map(ticks).find((found) => found.length <= most) ?? ticks(120)
}
