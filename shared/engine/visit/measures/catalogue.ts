/** Every measure of the visit with where it stands, in the order of the walk. */
import { bothSides } from '../sides.ts'
import { ankleMeasures } from './ankles.table.ts'
import { buildMeasures, growthMeasures, sizeMeasures } from './body.table.ts'
import { captureMeasures, footMeasures } from './feet.table.ts'
import type { Measure, Measures, NumberMeasure } from './measure.ts'
import { playMeasures } from './play.table.ts'
import { postureMeasures } from './posture.table.ts'

/** Measures that stand together under a heading. */
export interface Section {
	/** The part of the visit file. */
	group: 'feet' | 'ankles' | 'posture' | 'play' | 'body'
	/** Whether each side has its own. */
	sided: boolean
	heading: string
	/** The part of the body of a side: 'Left ankle'. */
	part: 'foot' | 'ankle' | 'player'
	/** Whose findings its charts stand beside. */
	topic: 'sizing' | 'ankle' | 'posture' | 'growth' | 'loading'
	/** Whether two visits are compared only where the feet had the same stance. */
	stance: 'alike' | 'any'
	measures: Measures
}
export const sections = {
	feet: {
		group: 'feet',
		sided: true,
		heading: 'Both feet, standing, weight on both',
		part: 'foot',
		topic: 'sizing',
		stance: 'alike',
		measures: footMeasures,
	},
	capture: {
		group: 'feet',
		sided: false,
		heading: 'How it was measured',
		part: 'foot',
		topic: 'sizing',
		stance: 'any',
		measures: captureMeasures,
	},
	ankles: {
		group: 'ankles',
		sided: true,
		heading: 'Weight-bearing lunge and range',
		part: 'ankle',
		topic: 'ankle',
		stance: 'any',
		measures: ankleMeasures,
	},
	posture: {
		group: 'posture',
		sided: true,
		heading: 'Relaxed stance',
		part: 'foot',
		topic: 'posture',
		stance: 'any',
		measures: postureMeasures,
	},
	play: {
		group: 'play',
		sided: false,
		heading: 'Play',
		part: 'player',
		topic: 'loading',
		stance: 'any',
		measures: playMeasures,
	},
	size: {
		group: 'body',
		sided: false,
		heading: 'Body',
		part: 'player',
		topic: 'growth',
		stance: 'any',
		measures: sizeMeasures,
	},
	growth: {
		group: 'body',
		sided: false,
		heading: 'Stature and family',
		part: 'player',
		topic: 'growth',
		stance: 'any',
		measures: growthMeasures,
	},
	build: {
		group: 'body',
		sided: false,
		heading: 'Whole body',
		part: 'player',
		topic: 'posture',
		stance: 'any',
		measures: buildMeasures,
	},
} as const satisfies Readonly<Record<string, Section>>

/** A measure with its key and where it stands. */
export interface Placed<Of extends Measure = Measure>
	extends Omit<Section, 'heading' | 'measures'> {
	key: string
	measure: Of
}
/** The measures of a section in order. */
export const placedIn = ({ heading: _, measures, ...place }: Section): Placed[] =>
	Object.entries(measures).map(([key, measure]) => ({ ...place, key, measure }))

export const catalogue: readonly Placed[] = Object.values<Section>(sections).flatMap(placedIn)

/** Paths in the visit file: one, or left and right. */
export const pathsOf = ({
	group,
	sided,
	key,
}: Pick<Placed, 'group' | 'sided' | 'key'>): readonly [string] | readonly [string, string] =>
	sided ? [`${group}.left.${key}`, `${group}.right.${key}`] : [`${group}.${key}`]

const byPath = new Map(catalogue.flatMap((placed) => pathsOf(placed).map((path) => [path, placed])))
/** The measure at a path of the visit file; undefined where none is defined there. */
export const measureAt = (path: string): Placed | undefined => byPath.get(path)

export const isNumber = (measure: Measure): measure is NumberMeasure =>
	measure.kind === 'number' || measure.kind === 'whole'
/** The measures that are numbers. */
export const numberMeasures: readonly Placed<NumberMeasure>[] = catalogue.flatMap(
	({ measure, ...place }) => (isNumber(measure) ? [{ ...place, measure }] : []),
)
/** The sides a measure has; undefined stands for the one that has none. */
export const sidesOf = ({ sided }: Pick<Placed, 'sided'>) => (sided ? bothSides : [undefined])
