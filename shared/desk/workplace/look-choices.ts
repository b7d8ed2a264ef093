/**
 * What one PC may choose of its look, and what stands before anything was chosen. No schema here:
 * the first page need not read one.
 */
export const looks = ['system', 'light', 'dark', 'contrast'] as const
export type LookName = (typeof looks)[number]
export const textSizes = [100, 125, 150, 175, 200] as const
export const defaultLook: {
	colours: LookName
	textPercent: number
	singleKeys: boolean
	tourSeen: boolean
} = { colours: 'system', textPercent: 100, singleKeys: false, tourSeen: false }
