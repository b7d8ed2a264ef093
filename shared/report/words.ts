/** Plain words for what the engine names in trade terms. */
import type { Feature } from '../visit/terms.ts'

export const featureWords: Record<Feature, string> = {
	'wide-fitting': 'a wide fitting', 'narrow-fitting': 'a narrow fitting', 'deep-toe-box': 'depth over the toes', 'soft-upper': 'a soft upper that gives', 'smooth-forefoot-seams': 'no seams over the front of the foot',
	'firm-heel-counter': 'a firm cup around the heel', 'soft-heel-counter': 'a soft cup around the heel', 'low-heel-collar': 'a low collar behind the heel', 'raised-heel': 'a heel higher than the front', 'low-heel': 'a flat sole',
	'full-length-cushioning': 'cushioning along the whole sole', 'wide-base': 'a wide, steady base', 'stiff-forefoot': 'a front that bends little', 'flexible-forefoot': 'a front that bends easily', 'torsional-stiffness': 'a middle that does not twist',
	'removable-liner': 'a liner that comes out', 'low-mass': 'a very light boot', 'round-studs': 'round studs', 'bladed-studs': 'bladed studs', 'many-studs': 'many studs', 'short-studs': 'short studs',
	'stud-clear-of-first-joint': 'no stud under the big-toe joint', 'stud-clear-of-fifth-metatarsal': 'no stud under the outer edge of the forefoot', 'low-rotational-grip': 'studs that let the foot turn',
}
export const actionWords = { proceed: 'no referral recorded', letter: 'letter to the doctor', imaging: 'imaging before impact sport', 'same-day': 'medical review the same day', emergency: 'emergency care now' } as const
export const defaultWarningSigns = ['pain that makes you limp', 'pain at rest or at night', 'swelling, a change of colour, or numbness', 'a blister or a break in the skin from a shoe or insert']
const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']
/** '2027-01-20' as '20 January 2027'. */
export function dateWords(isoDate: string): string {
	const [year, month, day] = isoDate.slice(0, 10).split('-').map(Number)
	return `${day} ${months[(month ?? 1) - 1]} ${year}`
}
/** A number for reading, without trailing zeros. */
export const shown = (value: number, digits = 1): string => String(Math.round(value * 10 ** digits) / 10 ** digits)
/** Half sizes as the trade writes them. */
export const sizeShown = (size: number): string => (Number.isInteger(size) ? String(size) : `${Math.floor(size) || ''}½`)
