/** The levels of a season in words. */
import { amount } from '../format.ts'

/** What is counted on each level of a season; whoever states one that lacks a name does not compile. */
export const levelNames = {
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
} as const
/** A level that was not proven the best, and how far from it at most. */
export type OpenLevel = { level: keyof typeof levelNames; gapPercent: number }
/** 'even wear: within 2 % of the best possible'. */
export const openLevelWords = ({ level, gapPercent }: OpenLevel): string =>
	gapPercent >= 100
		? `${levelNames[level]}: how near to the best is not known`
		: `${levelNames[level]}: within ${amount(gapPercent, '%', 2)} of the best possible`
