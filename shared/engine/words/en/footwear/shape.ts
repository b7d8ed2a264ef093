/** What the rules of shape and posture say. */
import { sentence } from '../../sentence.ts'

export const shapeSentences = {
	'footwear.broad': sentence({
		clinician: () =>
			'Broad foot for its length: a wide and deep forefoot in an upper that gives; lacing that ' +
			'skips the lowest rows adds room.',
		player: () =>
			'Your foot is broad for its length. Look for width and depth at the front, in an upper ' +
			'that gives.',
	}),
	'footwear.narrow': sentence({
		clinician: () =>
			'Narrow foot: most boots are low in volume already. Try a thicker sock and lacing first, a ' +
			'narrow fitting last.',
		player: () =>
			'Your foot is narrow. Try a thicker sock and firmer lacing first. Try a narrow boot last.',
	}),
	'footwear.between-sizes': sentence({
		clinician: () =>
			'Narrow foot with bruised nails: the foot slides forward. Hold the heel and the instep ' +
			'rather than take a shorter boot.',
		player: () =>
			'Your foot slides forward and bruises the nails. Hold the heel and the top of the foot. Do ' +
			'not take a shorter boot.',
	}),
	'footwear.unequal-feet': sentence({
		clinician: () =>
			'Feet of different length: fit the longer foot; a liner that comes out lets the shorter ' +
			'side be padded.',
		player: () =>
			'One foot is longer. Fit your boots to that foot. A liner that comes out lets us pad the ' +
			'other side.',
	}),
	'footwear.first-ray': sentence({
		clinician: () =>
			'A plantarflexed first ray and a stud under the first joint concentrate pressure there: ' +
			'choose a sole without it, or have that stud lowered.',
		player: () =>
			'A stud under your big-toe joint presses there. Choose a sole with no stud there, or have ' +
			'it lowered.',
	}),
	'footwear.first-ray-mobile': sentence({
		clinician: () =>
			'Very mobile first ray: a forefoot that does not give under it. The hand test agrees ' +
			'poorly between examiners.',
		player: () => 'The front of your foot moves a lot. A front that bends little keeps it steady.',
	}),
	'footwear.cavus': sentence({
		clinician: () =>
			'High arch: cushioning and a wide outer platform; bladed soles load the outer border.',
		player: () =>
			'Your arch is high. Look for cushioning and a wide, steady base. Blades load the outer ' +
			'edge of your foot.',
	}),
	'footwear.high-instep': sentence({
		clinician: () => 'High arch and instep: room over the instep, and lacing that leaves a window.',
		player: () => 'Your foot is high on top. Look for room there. Lace with a gap over it.',
	}),
	'footwear.pronated': sentence({
		clinician: () =>
			'Flat foot: a firm counter and a stiff midfoot hold an insert; the liner must come out.',
		player: () =>
			'Your foot is flat. Look for a firm heel cup and a middle that does not twist. The liner ' +
			'should come out.',
	}),
}
