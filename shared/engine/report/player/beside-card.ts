/** Another pair in as few words as tell it from the card of page one. */
import { studFeatures } from '../../prescription/roles/sole.table.ts'
import type { Feature } from '../../visit/terms.ts'
import type { Speak } from '../../words/speak.ts'
import { beyondCard, onCard } from '../page-one/shop.ts'
import { featuresInWords, type PairsAlike } from './pairs-alike.ts'

type Asked = Pick<PairsAlike, 'seek' | 'avoid'>
const without = (features: readonly Feature[], others: readonly Feature[]): Feature[] =>
	features.filter((feature) => !others.includes(feature))
type Says = (features: string) => string
const sentenceOf = (features: readonly Feature[], says: Says): string[] =>
	features.length === 0 ? [] : [says(featuresInWords(features))]
/** All that is asked. */
const whole = ({ seek, avoid }: Asked, t: Speak): string[] => [
	...sentenceOf(seek, (features) => t('player.lookForThese', { features })),
	...sentenceOf(avoid, (features) => t('player.stayAway', { features })),
]
const isOfStuds = (feature: Feature): boolean => studFeatures.includes(feature)
/** A pair of which no stud is asked: then what the card says of studs does not count. */
function withoutStuds(asked: Asked, card: Asked): Asked | undefined {
	const isAsked = [...asked.seek, ...asked.avoid].some(isOfStuds)
	if (isAsked || ![...card.seek, ...card.avoid].some(isOfStuds)) return undefined
	const plain = (features: readonly Feature[]) => features.filter((one) => !isOfStuds(one))
	return { seek: plain(card.seek), avoid: plain(card.avoid) }
}
/** Only what differs from the card. */
function different(asked: Asked, onPageOne: Asked, t: Speak): string[] {
	const studless = withoutStuds(asked, onPageOne)
	const card = studless ?? onPageOne
	return [
		t(studless ? 'player.asOnCardNoStuds' : 'player.asOnCard'),
		...sentenceOf(without(asked.seek, card.seek), (features) =>
			t('player.alsoLookFor', { features }),
		),
		...sentenceOf(without(card.seek, [...asked.seek, ...asked.avoid]), (features) =>
			t('player.notNeeded', { features }),
		),
		...sentenceOf(without(asked.avoid, card.avoid), (features) =>
			t(card.avoid.length > 0 ? 'player.alsoStayAway' : 'player.stayAway', { features }),
		),
		...sentenceOf(without(card.avoid, [...asked.avoid, ...asked.seek]), (features) =>
			t('player.fineHere', { features }),
		),
	]
}
/** @param card the pairs of page one; undefined where it has none */
export function besideCard(alike: PairsAlike, card: PairsAlike | undefined, t: Speak): string {
	const all = whole(alike, t)
	const shown = card && different(alike, onCard(card), t)
	const isShorter = shown && shown.join(' ').length < all.join(' ').length
	return [...(alike.inside ? [`${alike.inside}.`] : []), ...(isShorter ? shown : all)].join(' ')
}
/** What the card had no room for; empty where it had. */
export function beyondWords(alike: Asked, t: Speak): string {
	const { seek, avoid } = beyondCard(alike)
	return [
		...sentenceOf(seek, (features) => t('player.ifYouCanChoose', { features })),
		...sentenceOf(avoid, (features) => t('player.alsoStayAway', { features })),
	].join(' ')
}
