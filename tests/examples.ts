/**
 * Before each test file: property tests try the same examples on every machine, so that a run that
 * fails can be repeated.
 * Other examples are a search of their own: LASTWRIGHT_SEED=7 LASTWRIGHT_RUNS=2000 npm run unit.
 */
import fc from 'fast-check'

const asked = (name: string): number | undefined => {
	const text = process.env[name]
	if (text === undefined || text === '') return undefined
	if (!/^\d{1,9}$/.test(text))
		throw new Error(`${name} is "${text}": a whole number of up to nine digits is needed.`)
	return Number(text)
}
const runs = asked('LASTWRIGHT_RUNS')
fc.configureGlobal({
	seed: asked('LASTWRIGHT_SEED') ?? 20270104,
	...(runs === undefined ? {} : { numRuns: runs }),
})
