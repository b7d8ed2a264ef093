/** The standard normal distribution, to about 1e-12. */
const density = (x: number): number => Math.exp(-0.5 * x * x) / Math.sqrt(2 * Math.PI)

/**
 * Probability above x. Series near the middle, continued fraction in the tail (no cancellation).
 */
export function above(x: number): number {
	if (x < 0) return 1 - above(-x)
	if (x < 3) {
		let term = x,
			sum = x
		for (let odd = 3; odd < 200 && term > 1e-18; odd += 2) {
			term *= (x * x) / odd
			sum += term
		}
		return 0.5 - density(x) * sum
	}
	let fraction = x
	for (let step = 80; step >= 1; step--) fraction = x + step / fraction
	return density(x) / fraction
}
/** Probability below x. */
export const below = (x: number): number => above(-x)
/** The x with probability p above it, 0 < p < 1; found by halving. */
export function quantileAbove(p: number): number {
	let low = -40,
		high = 40
	for (let step = 0; step < 100; step++) {
		const middle = (low + high) / 2
		if (above(middle) > p) low = middle
		else high = middle
	}
	return (low + high) / 2
}
