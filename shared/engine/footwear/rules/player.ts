/** What body mass, growth and the place in the team ask of a shoe. */
import { reading } from '../../findings/finding.ts'
import { state } from '../../words/statement.ts'
import type { Facts } from '../facts.ts'
import { belief, type FootwearRule, positionsWith, practice } from './rule.ts'

/** Where two measures disagree it counts as if it were; where nothing is known, nothing is said. */
const spurtOf = ({ growthBand, aroundSpurt }: Facts): 'around' | 'uncertain' | undefined => {
	if (!aroundSpurt) return undefined
	return growthBand === 'around' ? 'around' : 'uncertain'
}

export const playerRules: readonly FootwearRule[] = [
	{
		id: 'heavy',
		rank: 'body-and-position',
		needs: ['body.massKg'],
		found: ({ heavy, massKg }) =>
			heavy && massKg !== undefined ? [reading('massKg', massKg, 'kg')] : [],
		seek: ['full-length-cushioning', 'wide-base'],
		avoid: ['low-mass'],
		basis: { ...belief, threshold: 'footwear.heavyKg' },
	},
	{
		id: 'lighter-runner',
		rank: 'body-and-position',
		needs: ['body.massKg'],
		found: (facts) => facts.lighter,
		seek: ['full-length-cushioning'],
		avoid: [],
		roles: ['running'],
		basis: {
			source:
				'Malisoux 2020, Am J Sports Med 48:473 (n 848; hard shoe, lighter runners 1.80, heavier ' +
				'1.23 not significant)',
			strength: 'trial',
		},
	},
	{
		id: 'junior',
		rank: 'growth',
		needs: ['player.birthDate'],
		found: ({ adult, ageYears }) =>
			adult ? [] : [{ measure: 'ageYears', value: Math.floor(ageYears), unit: 'years' }],
		seek: ['many-studs', 'soft-upper'],
		avoid: ['bladed-studs'],
		basis: practice,
	},
	{
		id: 'growth-spurt',
		rank: 'growth',
		needs: ['player.birthDate'],
		found: (facts) => {
			const band = spurtOf(facts)
			return band === undefined ? [] : [{ measure: 'growthBand', value: band }]
		},
		says: (facts) => state('footwear.growth-spurt', { band: spurtOf(facts) ?? 'uncertain' }),
		seek: ['full-length-cushioning'],
		avoid: [],
		roles: ['training', 'running'],
		basis: practice,
	},
	{
		id: 'contest',
		rank: 'body-and-position',
		needs: ['play.position'],
		role: 'contest',
		says: (facts) => state('footwear.contest', { positions: positionsWith('contest', facts) }),
		seek: ['full-length-cushioning', 'wide-base'],
		avoid: [],
		basis: belief,
	},
	{
		id: 'scrum',
		rank: 'body-and-position',
		needs: ['play.position'],
		role: 'scrum',
		says: (facts) => state('footwear.scrum', { positions: positionsWith('scrum', facts) }),
		seek: ['many-studs', 'wide-base'],
		avoid: ['low-mass'],
		basis: practice,
	},
	{
		id: 'speed-position',
		rank: 'preference',
		needs: ['play.position'],
		role: 'speed',
		says: (facts) => state('footwear.speed-position', { positions: positionsWith('speed', facts) }),
		seek: ['low-mass'],
		avoid: [],
		roles: ['match'],
		basis: belief,
	},
	{
		id: 'kicking-support',
		rank: 'body-and-position',
		needs: ['play.position'],
		role: 'kicking-support',
		says: (facts) =>
			state('footwear.kicking-support', { positions: positionsWith('kicking-support', facts) }),
		seek: ['wide-base', 'low-rotational-grip'],
		avoid: [],
		basis: practice,
	},
]
