/** The levels of a season in words. */
import type { Level } from '../../../season/problem/levels.ts'
import { amount } from '../format.ts'

/** A level that was not proven the best, and how far from it at most. */
export type OpenLevel = { level: Level; gapPercent: number }
/** What is counted on each level. */
const levelNames: Readonly<Record<Level, string>> = {
	matches: 'matches with a pair',
	pins: 'pinned pairs worn',
	trainings: 'trainings with a pair',
	suited: 'soles that suit the ground',
	dry: 'pairs dry before they are worn',
	familiar: 'matches in a pair of the trainings before',
	told: 'as the plan before said',
	shares: 'shares of the training time',
	even: 'even wear',
	changes: 'few changes of pair',
}
/** 'even wear: within 2 % of the best possible'. */
export const openLevelWords = ({ level, gapPercent }: OpenLevel): string =>
	gapPercent >= 100
		? `${levelNames[level]}: how near to the best is not known`
		: `${levelNames[level]}: within ${amount(gapPercent, '%', 2)} of the best possible`
