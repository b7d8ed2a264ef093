/**
 * Findings that are a caveat about a method: a footnote of the result that they qualify, and nothing
 * to decide. By their code.
 */
export const footnotes: ReadonlySet<string> = new Set([
	'sizing.young-width',
	'sizing.check-inside',
	'growth.best-ages',
	'growth.estimate',
	'growth.one-method',
	'growth.bias',
	'growth.not-for',
	'growth.population',
	'growth.privacy',
	'growth.foot-forecast',
	'growth.centiles',
	'growth.girls',
	'growth.near-boundary',
	'loading.force',
])
