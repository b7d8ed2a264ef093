/** A fixed sequence of normal errors, spread evenly over every pair of measures. */
import { quantileAbove } from '../plain/normal.ts'

/** How often a proposal is tried. @internal */
export const trials = 200
/**
 * One step through the quantiles for each measure, without a common divisor with the trials: a
 * lattice rule, chosen so that no two measures follow each other (own choice).
 */
const steps = [1, 127, 63, 169, 187, 149, 171] as const
/** How many measures can be moved at once. */
export const mostMeasures = steps.length

/** The normal quantiles at the middle of each of the equal shares, lowest first. */
const quantiles = (): number[] => {
	const lower = Array.from({ length: trials / 2 }, (_, index) =>
		quantileAbove(1 - (index + 0.5) / trials),
	)
	return [...lower, ...lower.map((z) => -z).reverse()]
}
/**
 * Standard errors by which each measure is moved, trial by trial: each measure takes every quantile
 * once. @param measures how many, at most `mostMeasures`
 */
export function errorSequence(measures: number): number[][] {
	const table = quantiles()
	return Array.from({ length: trials }, (_, trial) =>
		steps.slice(0, measures).map((step) => table[(trial * step) % trials] ?? 0),
	)
}
