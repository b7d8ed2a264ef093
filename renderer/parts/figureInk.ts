/**
 * The engine draws in the inks of paper; on the screen each ink takes the colour of what it stands
 * for, so that a drawing follows the look. On paper, and on a page shown as paper, it keeps its own.
 */
const text = 'var(--mui-palette-text-primary)'
const quiet = 'var(--mui-palette-text-secondary)'
const clinic = 'var(--mui-palette-primary-main)'

interface Ink {
	screen: string
	/** where the system chooses the colours */
	forced: string
}
/** @internal */
export const inks: Readonly<Record<string, Ink>> = {
	// words, axes, joints, what is taken from outside
	'#1d2726': { screen: text, forced: 'CanvasText' },
	'#4a5653': { screen: quiet, forced: 'CanvasText' },
	'#d5dbd8': { screen: 'var(--mui-palette-divider)', forced: 'GrayText' },
	'#ffffff': { screen: 'var(--mui-palette-background-paper)', forced: 'Canvas' },
	// a stud, and a stud or joint at risk
	'#5b6766': { screen: quiet, forced: 'CanvasText' },
	'#b3261e': { screen: 'var(--mui-palette-error-main)', forced: 'Highlight' },
	// what the drawing is about, in the colour of the clinic
	'#17524f': { screen: clinic, forced: 'CanvasText' },
	'#0f6b5c': { screen: clinic, forced: 'CanvasText' },
}
/** Each ink of the drawing put in the colours that `of` names. */
const inkedAs = (of: keyof Ink) =>
	Object.fromEntries(
		Object.entries(inks).flatMap(([ink, as]) => [
			[`& [fill="${ink}"]`, { fill: as[of] }],
			[`& [stroke="${ink}"]`, { stroke: as[of] }],
		]),
	)
/** For a part round a drawing: its inks follow the look, its words are set in our own type. */
export const screenInk = {
	color: 'text.primary',
	bgcolor: 'background.paper',
	'& text': { fontFamily: 'inherit', fontVariantNumeric: 'tabular-nums' },
	...inkedAs('screen'),
	'@media (forced-colors: active)': { bgcolor: 'Canvas', ...inkedAs('forced') },
} as const
