/**
 * Exact figures of a count of successes in independent trials: tails, and the interval of Clopper
 * and Pearson (Biometrika 1934;26:404-413). Pure.
 */

/** Natural logarithm of n over k. */
function logChoose(n: number, k: number): number {
	let sum = 0
	for (let each = 1; each <= k; each++) sum += Math.log((n - k + each) / each)
	return sum
}
/** Chance of k successes in n trials. */
function chanceOf(k: number, n: number, share: number): number {
	if (share <= 0) return k === 0 ? 1 : 0
	if (share >= 1) return k === n ? 1 : 0
	return Math.exp(logChoose(n, k) + k * Math.log(share) + (n - k) * Math.log1p(-share))
}
/** Chance of at most k successes in n trials, each with the chance `share`. */
export function atMost(k: number, n: number, share: number): number {
	let sum = 0
	for (let each = 0; each <= Math.min(k, n); each++) sum += chanceOf(each, n, share)
	return Math.min(1, sum)
}
/** Halvings until a share is known to one part in 10^12. */
const halvings = 40
/** Where a function that falls as the share rises comes down to a value. */
function whereFalls(of: (share: number) => number, value: number): number {
	let [low, high] = [0, 1]
	for (let step = 0; step < halvings; step++) {
		const middle = (low + high) / 2
		if (of(middle) > value) low = middle
		else high = middle
	}
	return (low + high) / 2
}
/**
 * The exact two-sided interval for the share behind k successes in n trials.
 * @param sure of the interval, such as 0.95
 */
export function exactInterval(k: number, n: number, sure: number): { low: number; high: number } {
	const tail = (1 - sure) / 2
	return {
		low: k === 0 ? 0 : whereFalls((share) => atMost(k - 1, n, share), 1 - tail),
		high: k === n ? 1 : whereFalls((share) => atMost(k, n, share), tail),
	}
}
