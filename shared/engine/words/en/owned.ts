/** The verdict on a pair that the player owns, and what its room comes to. */
import type { Sole, Surface } from '../../visit/terms.ts'
import { sentence } from '../sentence.ts'
import { amount, article, capital, day, number, ofSide, term, terms, together } from './format.ts'
import { onFootParts, onFootSentences } from './on-foot.ts'
import { pairParts } from './pairs.ts'
import { type Part, spokenParts } from './parts.ts'

/** Toe room and the band asked for, mm. */
type Room = {
	toeRoomMm: number
	leastMm: number
	mostMm: number
	/** The feet on which it was seen standing, where that decides. */
	seen?: 'left' | 'right' | 'both'
}
const asked = ({ leastMm, mostMm }: Room): string =>
	`${number(leastMm)} to ${amount(mostMm, 'mm')} asked for`
/** Below nought the pair is shorter than the length to fit. */
const room = (of: Room): string =>
	of.toeRoomMm < 0
		? `Inside it is ${amount(-of.toeRoomMm, 'mm')} shorter than the length to fit; toe room of ` +
			asked(of)
		: `Toe room ${amount(of.toeRoomMm, 'mm')}` +
			`${of.seen === undefined ? '' : ` seen standing (${ofSide(of.seen, 'foot', 'feet')})`}, ${asked(of)}`

/** What is to be done with the pair. */
const verdictSentences = {
	'owned.keep': sentence({
		clinician: () => 'Keep.',
		player: () => 'Keep wearing this pair.',
		coach: () => 'To be worn.',
	}),
	'owned.keep-unmeasured': sentence({
		clinician: () =>
			'Nothing speaks against it, but its room is not known: measure before relying on it.',
		player: () => 'You may wear this pair. We still have to measure it.',
		guardian: () => 'This pair may be worn. We still have to measure it.',
	}),
	'owned.training-only': sentence({
		clinician: () => 'Training only.',
		player: () => 'Wear this pair to train, not in a match.',
		coach: () => 'For training only.',
	}),
	'owned.modify': sentence<{ mendFirst: boolean }>({
		clinician: ({ mendFirst }) =>
			mendFirst ? 'Not to be worn until it is mended.' : 'Keep, with a change.',
		player: ({ mendFirst }) =>
			mendFirst
				? 'Do not wear this pair until it is mended.'
				: 'Keep this pair, but change something.',
		coach: ({ mendFirst }) => (mendFirst ? 'Not to be worn until it is mended.' : 'To be worn.'),
	}),
	'owned.replace': sentence<{ by?: string; held: boolean; hurts?: boolean }>({
		clinician: ({ by, held, hurts }) => {
			if (held) return 'Too far gone to keep for long; nothing is bought until the review.'
			const replaced = `Replace${by === undefined ? '' : ` by ${day(by)}`}`
			return hurts ? `${replaced}.` : `${replaced}; it may be worn until then unless it hurts.`
		},
		player: ({ by, held, hurts }) =>
			together(
				held
					? 'This pair will not do for long. Wait with a new one until we have seen you again.'
					: `You need another pair${by === undefined ? '' : ` by ${day(by)}`}.`,
				!held && !hurts && 'You may wear this one until then. Stop if it hurts.',
			),
		guardian: ({ by, held, hurts }) =>
			together(
				held
					? 'This pair will not do for long. Wait with a new one until the next visit here.'
					: `Another pair is needed${by === undefined ? '' : ` by ${day(by)}`}.`,
				!held && !hurts && 'This one may be worn until then, unless it hurts.',
			),
	}),
	'owned.stop-wearing': sentence<{ mendable: boolean; held: boolean }>({
		clinician: ({ mendable, held }) =>
			together(
				mendable ? 'Not to be worn unless it can be mended first.' : 'Not to be worn any more.',
				held && 'Nothing is bought in its place until the review.',
			),
		player: ({ mendable, held }) =>
			together(
				mendable ? 'Do not wear this pair until it is mended.' : 'Do not wear this pair any more.',
				held && 'Wait with a new pair until we have seen you again.',
			),
		guardian: ({ mendable, held }) =>
			together(
				mendable ? 'This pair is not worn until it is mended.' : 'This pair is not worn any more.',
				held && 'Wait with a new pair until the next visit here.',
			),
		coach: ({ mendable }) => (mendable ? 'Not to be worn until it is mended.' : 'Not to be worn.'),
	}),
}
/** What its length comes to. */
const roomSentences = {
	'owned.not-measured': sentence<{ lacks: 'inside-length' | 'foot-length' }>({
		clinician: ({ lacks }) =>
			lacks === 'inside-length' ? 'Inside length not measured.' : 'Foot length not measured.',
		player: () => 'We do not know yet how much room your toes have in them.',
		guardian: () => 'We do not know yet how much room the toes have in them.',
	}),
	'owned.touches': sentence<{ shortMm: number; withSock: boolean }>({
		clinician: ({ shortMm, withSock }) =>
			`The foot${withSock ? ' with its sock' : ''} touches the end` +
			`${shortMm > 0 ? `: inside it is ${amount(shortMm, 'mm')} too short` : ''}.`,
		player: () => 'Your toes touch the end.',
		guardian: () => 'The toes touch the end.',
		coach: () => 'Too short.',
	}),
	'owned.short-and-sore': sentence<Room>({
		clinician: (of) => `${room(of)}: too short for a foot that hurts, sore nails or skin at risk.`,
		player: () => 'They are too short for a foot that is sore or needs care.',
	}),
	'owned.short': sentence<Room & { swollen: boolean }>({
		clinician: (of) =>
			together(
				`${room(of)}: short of room.`,
				of.swollen && 'A foot was measured swollen or hurt: measure again when that has settled.',
			),
		player: ({ swollen }) =>
			together(
				'There is too little room in front of your toes.',
				swollen && 'We measure again when your foot is well.',
			),
		guardian: ({ swollen }) =>
			together(
				'There is too little room in front of the toes.',
				swollen && 'We measure again when the foot is well.',
			),
	}),
	'owned.room-near': sentence<Room>({
		clinician: (of) => `${room(of)}: within measuring error of it.`,
		player: ({ toeRoomMm }) =>
			`You have about ${amount(toeRoomMm, 'mm')} in front of your toes. That is near enough.`,
		guardian: ({ toeRoomMm }) =>
			`There is about ${amount(toeRoomMm, 'mm')} of room in front of the toes. That is near enough.`,
	}),
	'owned.room': sentence<Room>({
		clinician: (of) => `${room(of)}.`,
		player: ({ toeRoomMm }) => `You have ${amount(toeRoomMm, 'mm')} in front of your toes.`,
		guardian: ({ toeRoomMm }) =>
			`There is ${amount(toeRoomMm, 'mm')} of room in front of the toes.`,
	}),
	'owned.long': sentence<Room>({
		clinician: (of) => `${room(of)}: long; a thicker liner or sock takes up the room.`,
		player: () => 'They are a bit long. A thicker liner or sock can help.',
	}),
	'owned.too-long': sentence<Room>({
		clinician: (of) => `${room(of)}: too long to be filled.`,
		player: () => 'They are too long for you.',
		guardian: () => 'They are too long.',
	}),
	'owned.much-too-long': sentence<Room>({
		clinician: (of) => `${room(of)}: far too long, the foot slides and trips.`,
		player: () => 'They are far too long. You may trip in them.',
		guardian: () => 'They are far too long. The player may trip in them.',
		coach: () => 'Far too long.',
	}),
}
/** What the player says of it, its sole, and what is worn inside. */
const otherSentences = {
	'owned.hurts': sentence({
		clinician: () =>
			'It hurts: find what presses and put it right; left off where that does not help.',
		player: () => 'It hurts. Let us find what presses. Leave it off if that does not help.',
	}),
	'owned.hurts-at-risk': sentence({
		clinician: () => 'It hurts a foot whose skin is at risk.',
		player: () => 'It hurts, and the skin of your foot needs care.',
		guardian: () => 'It hurts, and the skin of the foot needs care.',
	}),
	'owned.uncomfortable': sentence<{ comfort: number }>({
		clinician: ({ comfort }) =>
			`Comfort ${number(comfort)} of 10: find what presses and put it right.`,
		player: () => 'It is not comfortable. Let us find what presses.',
	}),
	'owned.sole-nowhere': sentence<{ sole: Sole; grounds: readonly Surface[] }>({
		clinician: ({ sole, grounds }) =>
			`${capital(article(term(sole)))} sole must not be worn on ${terms(grounds, 'or')}, and nothing ` +
			'else is played on.',
		player: () => 'Its sole is not made for the grounds you play on. Do not wear it there.',
		guardian: () =>
			'Its sole is not made for the grounds that are played on. It is not worn there.',
		coach: ({ grounds }) => `Not to be worn on ${terms(grounds, 'or')}.`,
	}),
	'owned.take-out-raise': sentence<{ raiseMm: number }>({
		clinician: ({ raiseMm }) =>
			`A heel raise of ${amount(raiseMm, 'mm')} is worn inside and nothing calls for it now: take it out.`,
		player: () => 'Take the heel raise out of it. You do not need it now.',
		guardian: () => 'Take the heel raise out of it. It is not needed now.',
	}),
	'owned.raise-waits': sentence<{ raiseMm: number }>({
		clinician: ({ raiseMm }) =>
			`The heel raise of ${amount(raiseMm, 'mm')} inside is left as it is until the review.`,
		player: () => 'Leave the heel raise in it as it is until we have seen you again.',
		guardian: () => 'Leave the heel raise in it as it is until the next visit here.',
	}),
}
const ownedParts = { ...verdictSentences, ...roomSentences, ...otherSentences }
const partSentences = { ...pairParts, ...ownedParts, ...onFootParts }
/** The verdict of a pair, then what it rests on: each part by its own code. */
type Whole = { said: readonly Part[] }
/** `pair` as the player calls it. */
type WholeOfPair = Whole & { pair: string }
type Reader = 'clinician' | 'player' | 'guardian' | 'coach'
const whole = ({ said }: Whole, reader: Reader): string =>
	together(...spokenParts(partSentences, said, reader))
const named = (pair: WholeOfPair, reader: Reader): string => {
	const words = whole(pair, reader)
	return words === '' ? '' : `${pair.pair}: ${words}`
}
const wholeSentence = sentence<Whole>({
	clinician: (pair) => whole(pair, 'clinician'),
	player: (pair) => whole(pair, 'player'),
	guardian: (pair) => whole(pair, 'guardian'),
	coach: (pair) => whole(pair, 'coach'),
})
export const ownedSentences = {
	...pairParts,
	...ownedParts,
	...onFootParts,
	...onFootSentences,
	'owned.pair': wholeSentence,
	'pairs.pair': wholeSentence,
	'footwear.pair': sentence<WholeOfPair>({
		clinician: (pair) => named(pair, 'clinician'),
		player: (pair) => named(pair, 'player'),
		guardian: (pair) => named(pair, 'guardian'),
		coach: (pair) => named(pair, 'coach'),
	}),
}
