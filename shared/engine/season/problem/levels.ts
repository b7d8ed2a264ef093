/**
 * What matters in a season, the weightiest first. Each level is made as good as it can be without
 * giving up anything of those before it; what is forbidden or held is a rule and no level. The
 * order: common practice, no source.
 */
export const levels = [
	/** matches without a pair */
	'matches',
	/** sessions not worn in the pair that the clinician pinned */
	'pins',
	/** trainings without a pair */
	'trainings',
	/** hours times points of unsuitability */
	'suited',
	/** pairs worn before they were dry */
	'dry',
	/** matches in a pair not worn in training shortly before */
	'familiar',
	/** sessions worn otherwise than the plan before said */
	'told',
	/** training hours of a pair outside the share asked for */
	'shares',
	/** wear of the most worn pair, one pair worn all the time, price, gaps early in the season */
	'even',
	/** other pairs in sessions close together, changes of boots inside one */
	'changes',
] as const
export type Level = (typeof levels)[number]
/** A value for each level. */
export const eachLevel = <Value>(make: (level: Level) => Value): Record<Level, Value> =>
	Object.fromEntries(levels.map((level) => [level, make(level)])) as Record<Level, Value>
