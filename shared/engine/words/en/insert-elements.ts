/** What each element of an insert is for, and how it is made. */
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount } from './format.ts'

type Post = {
	side: Side
	/** Both or neither: without a heel width a post has an angle only. */
	heelWidthMm?: number
	heightMm?: number
}
/** A post is an angle; the laboratory builds a height. */
const postHeight = ({ side, heelWidthMm, heightMm }: Post): string =>
	heelWidthMm === undefined || heightMm === undefined
		? `Measure the ${side} heel width for its height.`
		: `On a heel ${amount(heelWidthMm, 'mm')} wide that is ${amount(heightMm, 'mm')} high.`
const builtHeight = ({ heelWidthMm, heightMm }: Post): string =>
	heelWidthMm === undefined || heightMm === undefined
		? 'Height by the width of the heel.'
		: `${amount(heightMm, 'mm')} high on a heel ${amount(heelWidthMm, 'mm')} wide.`
type Dome = {
	side: Side
	behindHeadsMm: number
	/** From the heel to its distal edge; absent where the ball length is not measured. */
	edgeMm?: number
}
export type ShellUnknown =
	| 'mass-not-measured'
	| 'posture-not-measured'
	| 'posture-zero'
	| 'supinated-at-limit'
const shellUnknown: Record<ShellUnknown, (limitKg: number) => string> = {
	'mass-not-measured': () => 'body mass is not measured',
	'posture-not-measured': () => 'the foot posture index is not measured',
	'posture-zero': () => 'the source gives no thickness for a foot posture index of 0',
	'supinated-at-limit': (limitKg) =>
		`the source gives no thickness for a supinated foot at exactly ${amount(limitKg, 'kg')}`,
}
const bases = {
	'insert.device-raise-alone': sentence({
		clinician: () => 'A raise alone, under the liner.',
		player: () => 'You only need a small raise under the liner of your shoe.',
		laboratory: () => 'No device: a raise alone, under the liner.',
	}),
	'insert.device-additions': sentence({
		clinician: () => 'Additions to the liner; no shell is called for.',
		player: () => 'We add soft parts to the liner of your shoe.',
		laboratory: () => 'Additions to the liner, without a shell.',
	}),
	'insert.device-prefabricated': sentence({
		clinician: () =>
			'Prefabricated first, with the additions below; a custom device only where it does not ' +
			'fit or does not help.',
		player: () => 'We start with a ready-made insert and change it to fit you.',
		laboratory: () => 'With the additions below.',
	}),
	'insert.shell': sentence<{
		thicknessMm: number
		/** By foot posture and body mass, where a boot does not hold so much. */
		wishedMm?: number
	}>({
		clinician: ({ thicknessMm, wishedMm }) =>
			wishedMm === undefined
				? `Polypropylene ${amount(thicknessMm, 'mm')}, by foot posture and body mass.`
				: `${amount(thicknessMm, 'mm')}, as thin as boots take; by foot posture and body mass ` +
					`${amount(wishedMm, 'mm')} of polypropylene, so take a stiffer material.`,
		laboratory: ({ wishedMm }) =>
			wishedMm === undefined
				? 'As given.'
				: `As stiff as ${amount(wishedMm, 'mm')} of polypropylene.`,
	}),
	'insert.shell-undecided': sentence<{ unknown: ShellUnknown; limitKg: number }>({
		clinician: ({ unknown, limitKg }) =>
			`The thickness is for you to decide, since ${shellUnknown[unknown](limitKg)}.`,
		laboratory: () => 'Thickness not given: ask before making.',
	}),
	'insert.heel-cup': sentence<{ cupMm: number }>({
		clinician: ({ cupMm }) => `Heel cup ${amount(cupMm, 'mm')}, so that the boot still closes.`,
		laboratory: () => 'The boot must still close.',
	}),
	'insert.heel-cup-for-skive': sentence<{ cupMm: number; bootMm: number }>({
		clinician: ({ cupMm, bootMm }) =>
			`Heel cup ${amount(cupMm, 'mm')} in trainers to carry the skive; ${amount(bootMm, 'mm')} in ` +
			'boots, without it.',
		laboratory: ({ bootMm }) =>
			`For trainers, to carry the skive. In boots ${amount(bootMm, 'mm')}, without the skive.`,
	}),
	'insert.cover-thin': sentence<{ mostMm: number }>({
		clinician: ({ mostMm }) => `Thin non-slip cover, ${amount(mostMm, 'mm')} at most in boots.`,
		laboratory: () => 'Thin, non-slip.',
	}),
	'insert.length-full': sentence({
		clinician: () =>
			'Full length, in place of the liner, since something stands under the forefoot.',
		laboratory: () => 'In place of the liner.',
	}),
	'insert.length-three-quarter': sentence({
		clinician: () => 'Three-quarter length, to just behind the heads: it takes the least room.',
		laboratory: () => 'To just behind the metatarsal heads.',
	}),
}
const rearfoot = {
	'insert.rearfoot-post-medial': sentence<Post>({
		clinician: (post) =>
			'Medial rearfoot post for a painful pronated foot. The effect on movement is small: aim ' +
			`at comfort. ${postHeight(post)}`,
		player: () => 'A small wedge holds up the inner side of your heel.',
		laboratory: builtHeight,
	}),
	'insert.rearfoot-post-lateral': sentence<Post>({
		clinician: (post) =>
			'Lateral rearfoot post for a supinated foot with outer foot or ankle trouble. ' +
			postHeight(post),
		player: () => 'A small wedge holds up the outer side of your heel.',
		laboratory: builtHeight,
	}),
	'insert.medial-skive': sentence<{ inertMm: number }>({
		clinician: ({ inertMm }) =>
			'Medial heel skive for a painful pronated foot that resists supination; ' +
			`${amount(inertMm, 'mm')} has shown no effect.`,
		player: () => 'The heel of your insert is cut to hold up its inner side.',
		laboratory: () => 'Varus wedge in the heel cup.',
	}),
	'insert.lateral-skive': sentence({
		clinician: () => 'Lateral heel skive for a supinated foot with peroneal tendon pain.',
		player: () => 'The heel of your insert is cut to hold up its outer side.',
		laboratory: () => 'Valgus wedge in the heel cup.',
	}),
}
const forefoot = {
	'insert.forefoot-post-medial': sentence({
		clinician: () => 'Small medial forefoot post for a flexible forefoot varus with pain.',
		player: () => 'A small wedge lies under the inner side of the front of your foot.',
		laboratory: () => 'Under the first metatarsal head.',
	}),
	'insert.forefoot-post-lateral': sentence({
		clinician: () =>
			'Lateral forefoot post under heads 2 to 5 for a forefoot valgus or a plantarflexed first ' +
			'ray with pain.',
		player: () => 'A small wedge lies under the outer side of the front of your foot.',
		laboratory: () => 'Under metatarsal heads 2 to 5.',
	}),
	'insert.first-ray-cutout': sentence({
		clinician: () =>
			'First-ray cut-out in the front edge of the shell, so that the first ray can come down. ' +
			'Not the first thing to try: it narrows and unsteadies the front edge.',
		player: () => 'A notch in the front edge lets your big toe joint move down.',
		laboratory: () => 'In the front edge of the shell.',
	}),
	'insert.forefoot-stiffener': sentence({
		clinician: () => 'Full-length stiff plate for a stiff or painful first joint.',
		player: () => 'A stiff plate gives your big toe joint a rest.',
		laboratory: () => 'Stiff plate over the full length.',
	}),
	'insert.metatarsal-dome': sentence<Dome>({
		clinician: ({ side, behindHeadsMm, edgeMm }) =>
			'Metatarsal dome behind the lesser heads. Its distal edge lies ' +
			(edgeMm === undefined
				? `${amount(behindHeadsMm, 'mm')} behind the heads: measure the ${side} heel-to-ball ` +
					'length for its place.'
				: `${amount(edgeMm, 'mm')} from the heel, ${amount(behindHeadsMm, 'mm')} behind the ` +
					'heads; confirm with the finger.'),
		player: () => 'A small dome takes load off the ball of your foot.',
		laboratory: ({ behindHeadsMm, edgeMm }) =>
			`Distal edge ${edgeMm === undefined ? '' : `${amount(edgeMm, 'mm')} from the heel, `}` +
			`${amount(behindHeadsMm, 'mm')} behind the heads.`,
	}),
	'insert.forefoot-cushion': sentence({
		clinician: () => 'Forefoot cushion: in running it lowered the pressure under the heads.',
		player: () => 'A soft layer cushions the ball of your foot.',
		laboratory: () => 'Soft layer under the metatarsal heads.',
	}),
	'insert.first-head-aperture': sentence({
		clinician: () =>
			'Aperture under the first head, with the padding around it, to take load off the sesamoids.',
		player: () => 'A hollow takes load off the joint under your big toe.',
		laboratory: () => 'Padding around the aperture.',
	}),
}
const heel = {
	'insert.heel-aperture': sentence({
		clinician: () => 'Contoured device with a heel aperture or pad for pain under the heel.',
		player: () => 'A hollow under your heel takes load off the sore spot.',
		laboratory: () => 'Contoured device, with a heel aperture or a pad.',
	}),
	'insert.heel-cushion': sentence({
		clinician: () => 'Heel cushion, both feet in a growing heel.',
		player: () => 'A soft layer cushions your heel.',
		laboratory: () => 'Soft layer under the heel.',
	}),
	'insert.heel-raise': sentence<{ evened?: boolean }>({
		clinician: ({ evened }) =>
			'Heel raise in both shoes. It does not treat the cause.' +
			(evened ? ' Equal on both sides, so that the leg-length raise keeps its effect.' : ''),
		player: () => 'A small raise lifts your heel. Wear one in each shoe.',
		laboratory: () => 'The same on both sides.',
	}),
	'insert.leg-length-raise': sentence<{
		side: Side
		differenceMm: number
		/** Share of the difference, or the height that the ankle's raises already differ by. */
		percent?: number
		byRaisesMm?: number
	}>({
		clinician: ({ side, differenceMm, percent, byRaisesMm }) =>
			`Raise under the shorter ${side} leg, ` +
			(byRaisesMm === undefined
				? `${amount(percent ?? 0, '%')} of the ${amount(differenceMm, 'mm')} difference to start with`
				: `${amount(byRaisesMm, 'mm')} of the ${amount(differenceMm, 'mm')} difference, as ` +
					'proposed with the heel raise') +
			': full at the heel, half at the ball.',
		player: ({ side }) => `A raise lifts your ${side} leg, as it is a little shorter.`,
		laboratory: () => 'Full at the heel, half at the ball.',
	}),
	'insert.leg-length-refer': sentence<{ differenceMm: number }>({
		clinician: ({ differenceMm }) =>
			`A difference of ${amount(differenceMm, 'mm')} is for referral before any raise.`,
		player: () => 'Your legs differ in length. A doctor looks at that first.',
		doctor: ({ differenceMm }) =>
			`The leg-length difference of ${amount(differenceMm, 'mm')} is referred before any raise.`,
		laboratory: () => 'No raise is ordered.',
	}),
	'insert.cover-full-contact': sentence({
		clinician: () => 'Full-contact cushioned cover for a painful high arch.',
		player: () => 'A soft cover spreads the load under your arch.',
		laboratory: () => 'Full contact, cushioned.',
	}),
}
export const elementSentences = { ...bases, ...rearfoot, ...forefoot, ...heel }
