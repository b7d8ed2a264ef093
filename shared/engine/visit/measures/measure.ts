/**
 * What is said of a measure where it is defined, once. Every fact has to be given; one that does
 * not exist is an explicit 'none'. Limits are physical plausibility (common practice, no source),
 * not clinical thresholds.
 */

import type { PrivateTopic } from '../private-topics.ts'

/** Said of what does not exist, so that nothing is left out by mistake. */
export type None = 'none'
/** Keys of protocol rows, as 'room.name'; findings/measure-rows.ts refuses one that is no row. */
type Rows = readonly string[]
type Span = readonly [least: number, most: number]

/** From where the picture beside the field shows it. */
export type View = 'top' | 'side' | 'rear' | 'lunge' | 'lying' | 'body'
/** Parts of a picture that can light up; drawn in renderer/parts/FootPicture.tsx. */
export type Part =
	| 'length'
	| 'ball-length'
	| 'width'
	| 'girth'
	| 'heel-width'
	| 'toe-depth'
	| 'instep'
	| 'navicular'
	| 'big-toe'
	| 'big-toe-standing'
	| 'first-ray'
	| 'heel-rise'
	| 'heel-tilt'
	| 'forefoot'
	| 'push-up'
	| 'wall'
	| 'shin'
	| 'straight'
	| 'bent'
	| 'end'
	| 'stature'
	| 'sitting'
	| 'mass'
	| 'legs'
/** How it is taken, in plain words. Common practice, no source, unless an error row names one. */
export interface Help {
	view: View
	part: Part
	/** How the player stands, sits or lies. */
	position: string
	steps: readonly string[]
}
/** The smallest change beyond error: a protocol row for each pair of examiners, where one is known. */
interface RealChange {
	same: string
	different: string | None
	/** Where the examiner was not recorded at both visits. */
	unknown: string | None
}
/** What it is held against. */
interface Norms {
	rows: Rows
	/** A reference table of protocol/norms. */
	table: 'cdc2000' | 'khamis-roche' | None
}
/** Charts that show more than the measure over the visits. */
export type Picture = 'foot-length' | 'stature-for-age' | 'mass-for-age' | 'hours-of-sport'
interface Trend {
	picture: Picture | 'own'
	/** In its unit: the axis never shows less, so that reading noise does not look like a slope. */
	leastSpan: number
	/** The protocol row drawn as a line, and what lies beyond it: 'below it the ankle counts as'. */
	cutOff:
		| { row: string; means: string /** It holds for adults as it stands. */; of?: 'adults' }
		| None
	/** Beside the findings and on paper as well as on the page of trends, or there alone. */
	beside: 'findings' | 'trends'
}
/**
 * The line of the tables that a reader gets: a text of words/en/documents.table.ts, or the label itself. No
 * reader gets what is not named here.
 */
interface ReportLines {
	player: string | 'label' | None
	doctor: string | 'label' | None
	laboratory: string | 'label' | None
}
interface Defined {
	/** Over the field, in tables and trends. */
	label: string
	/** Within a sentence: 'knee to wall'. */
	name: string
	/** Under the label. */
	hint: string | None
	help: Help | None
	report: ReportLines | None
	/** Whose visit is told to lack it. */
	wanted: 'everyone' | 'minors' | None
	/** Whether its station of a squad day is not done without it, or only offers it. */
	squadDay: 'needed' | 'offered' | None
	/** A private topic is on no guardian's, coach's or club's page. */
	private: PrivateTopic | None
}
/** A reading, a count or a score. */
export interface NumberMeasure extends Defined {
	kind: 'number' | 'whole'
	unit: string
	/** Refused outside. */
	hard: Span
	/** Questioned outside. */
	soft: Span
	/** Digits after the point when shown. */
	digits: 0 | 1 | 2
	/** Taken once; once or up to six times; or as so many items that are added up. */
	readings: 'once' | 'repeats' | { items: number; each: string }
	/** Rows that tell how far two readings of the same thing lie apart. */
	repeatError: Rows | None
	realChange: RealChange | None
	norms: Norms | None
	trend: Trend | None
}
interface ChoiceMeasure extends Defined {
	kind: 'choice'
	terms: readonly [string, ...string[]]
}
interface YesNoMeasure extends Defined {
	kind: 'yesNo'
}
interface TextMeasure extends Defined {
	/** A note is for the clinician alone: no document carries it. */
	kind: 'text' | 'note'
	/** Characters at most. */
	max: number
}
export type Measure = NumberMeasure | ChoiceMeasure | YesNoMeasure | TextMeasure
/** A table of measures, by their keys in the visit file. */
export type Measures = Readonly<Record<string, Measure>>
/** The keys of a table that are numbers. */
export type NumberKeys<Table extends Measures> = {
	[Key in keyof Table]: Table[Key] extends NumberMeasure ? Key : never
}[keyof Table]
