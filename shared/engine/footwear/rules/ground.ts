/** What the ground played on asks of a shoe. */
import { type FootwearRule, playedOn, practice } from './rule.ts'

export const groundRules: readonly FootwearRule[] = [
	{
		id: 'artificial',
		needs: ['play.surfaces'],
		when: (facts) =>
			facts.surfaces.includes('artificial-3g') || facts.surfaces.includes('artificial-sand')
				? [{ measure: 'Surface', value: 'artificial' }]
				: [],
		says:
			'Artificial ground: many low, evenly spread studs; soft-ground soles are unsuitable ' +
			'there.',
		seek: ['many-studs', 'short-studs'],
		avoid: ['bladed-studs'],
		basis: { source: 'Footwear Science traction project', strength: 'expert' },
	},
	{
		id: 'hard-ground',
		needs: ['play.surfaces'],
		when: (facts) =>
			facts.surfaces.includes('natural-hard')
				? [{ measure: 'Surface', value: 'natural, hard' }]
				: [],
		says: 'Hard ground: more and shorter studs spread the pressure.',
		seek: ['many-studs', 'short-studs'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'soft-ground',
		needs: ['play.surfaces'],
		when: (facts) => playedOn(facts, 'natural-soft'),
		says:
			'Soft natural ground: a soft-ground sole with long studs; on hard or artificial ground the ' +
			'same sole presses and grips too much.',
		seek: ['soft-ground-sole', 'long-studs'],
		avoid: ['turf-sole'],
		basis: practice,
	},
	{
		id: 'firm-ground',
		needs: ['play.surfaces'],
		when: (facts) => playedOn(facts, 'natural-firm', 'hybrid'),
		says: 'Firm natural or hybrid ground: a firm-ground sole, or an artificial-ground one.',
		seek: ['firm-ground-sole'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'dry-hard-sole',
		needs: ['play.surfaces'],
		when: (facts) => playedOn(facts, 'natural-hard'),
		says: 'Hard natural ground: an artificial-ground or turf sole; never soft-ground studs.',
		seek: ['artificial-ground-sole'],
		avoid: ['soft-ground-sole', 'long-studs'],
		basis: practice,
	},
	{
		id: 'third-generation',
		needs: ['play.surfaces'],
		when: (facts) => playedOn(facts, 'artificial-3g'),
		says:
			'Artificial turf (3G): an artificial-ground sole; soft-ground soles are unsuitable and ' +
			'firm-ground soles only partly suited.',
		seek: ['artificial-ground-sole'],
		avoid: ['soft-ground-sole', 'long-studs'],
		basis: { source: 'Footwear Science traction project', strength: 'expert' },
	},
	{
		id: 'sand-dressed',
		needs: ['play.surfaces'],
		when: (facts) => playedOn(facts, 'artificial-sand'),
		says: 'Sand-dressed artificial ground: a turf sole.',
		seek: ['turf-sole'],
		avoid: ['soft-ground-sole', 'firm-ground-sole', 'long-studs'],
		basis: practice,
	},
	{
		id: 'hall',
		needs: ['play.surfaces', 'play.code'],
		when: (facts) => [
			...playedOn(facts, 'hall'),
			...(facts.code === 'futsal' ? [{ measure: 'Code', value: 'futsal' }] : []),
		],
		says: 'Hall floor: a flat indoor sole.',
		seek: ['indoor-sole'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'road',
		needs: ['play.surfaces'],
		when: (facts) => playedOn(facts, 'road'),
		says: 'Road and gym: running shoes, never studs.',
		seek: ['full-length-cushioning'],
		avoid: [],
		basis: practice,
	},
]
